import { type RefObject, useEffect, useRef } from 'react';

interface Clipboard {
  readonly copy: () => string;
  readonly paste: (text: string) => void;
}

/**
 * Copy and paste while the focus stands on the element itself (not in a field inside it). The events of a place without
 * a selection go to the page's body, whether they come from the keys or from the Edit menu: so they are caught there.
 */
export function useClipboard(element: RefObject<HTMLElement | null>, clipboard: Clipboard): void {
  const latest = useRef(clipboard);
  latest.current = clipboard;
  useEffect(() => {
    const isHere = () => element.current !== null && document.activeElement === element.current;
    const onCopy = (event: ClipboardEvent) => {
      if (!isHere()) return;
      event.preventDefault();
      event.clipboardData?.setData('text/plain', latest.current.copy());
    };
    const onPaste = (event: ClipboardEvent) => {
      if (!isHere()) return;
      event.preventDefault();
      latest.current.paste(event.clipboardData?.getData('text/plain') ?? '');
    };
    document.addEventListener('copy', onCopy);
    document.addEventListener('paste', onPaste);
    return () => {
      document.removeEventListener('copy', onCopy);
      document.removeEventListener('paste', onPaste);
    };
  }, [element]);
}
