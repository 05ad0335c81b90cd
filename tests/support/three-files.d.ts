/** The readers and writers of files of a general-purpose graphics library, as far as the tests hold ours against them. */
interface PlainGeometry {
  readonly attributes: { readonly position: { readonly array: ArrayLike<number>; readonly count: number } };
  readonly index: { readonly array: ArrayLike<number> } | null;
}
interface PlainNode {
  readonly isMesh?: boolean;
  readonly geometry?: PlainGeometry;
  traverse(visit: (node: PlainNode) => void): void;
}
declare module 'three/examples/jsm/loaders/OBJLoader.js' {
  export class OBJLoader {
    parse(text: string): PlainNode;
  }
}
declare module 'three/examples/jsm/loaders/STLLoader.js' {
  export class STLLoader {
    parse(data: ArrayBuffer | string): PlainGeometry;
  }
}
declare module 'three/examples/jsm/loaders/3MFLoader.js' {
  export class ThreeMFLoader {
    parse(data: ArrayBuffer): PlainNode;
  }
}
declare module 'three/examples/jsm/exporters/STLExporter.js' {
  export class STLExporter {
    parse(scene: PlainNode, options: { binary: true }): DataView;
    parse(scene: PlainNode, options: { binary: false }): string;
  }
}
declare module 'three/examples/jsm/exporters/OBJExporter.js' {
  export class OBJExporter {
    parse(scene: PlainNode): string;
  }
}
