/** The part of the package that tests use; it brings no types of its own. */
declare module 'jsdom' {
  export class JSDOM {
    constructor(html: string);
    readonly window: { readonly DOMParser: typeof DOMParser };
  }
}
