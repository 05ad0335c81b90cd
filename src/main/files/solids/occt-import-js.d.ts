/** The part of the package that is used here; it brings no types of its own. */
declare module 'occt-import-js' {
  interface Reading {
    readonly success: boolean;
    readonly meshes?: readonly {
      readonly attributes: { readonly position: { readonly array: readonly number[] } };
      readonly index: { readonly array: readonly number[] };
    }[];
  }
  interface Reader {
    ReadStepFile(
      content: Uint8Array,
      params: {
        readonly linearUnit: 'millimeter';
        readonly linearDeflectionType: 'absolute_value';
        readonly linearDeflection: number;
        readonly angularDeflection: number;
      },
    ): Reading;
  }
  interface Start {
    readonly print: (text: string) => void;
    readonly printErr: (text: string) => void;
  }
  export default function load(start: Start): Promise<Reader>;
}
