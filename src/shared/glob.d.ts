/**
 * The one bundler feature that the engine uses: a folder's modules, read when the program is built. Declared here by
 * hand because the bundler's own types would bring the window's types along.
 */
interface ImportMeta {
  readonly glob: <M>(
    pattern: string | readonly string[],
    options: { readonly eager: true; readonly import: string },
  ) => Record<string, M>;
}

/** The address of a file that goes along with the window's bundle. */
declare module '*.wasm?url' {
  const url: string;
  export default url;
}
