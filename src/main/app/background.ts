/** `--paper` of the window's tokens.css in each theme: what a window shows before its page has painted. */
export const BACKGROUND = { light: '#f3eee3', dark: '#17212c' } as const;
