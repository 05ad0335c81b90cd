import { type RefObject, useLayoutEffect, useState } from 'react';

/** The inner size of an element in px, kept up to date; zero before the first look. */
export function useSize(element: RefObject<HTMLElement | null>): { readonly width: number; readonly height: number } {
  const [size, setSize] = useState({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const target = element.current;
    if (target === null) return;
    const look = () => {
      const next = { width: target.clientWidth, height: target.clientHeight };
      setSize((now) => (now.width === next.width && now.height === next.height ? now : next));
    };
    look();
    const observer = new ResizeObserver(look);
    observer.observe(target);
    return () => observer.disconnect();
  }, [element]);
  return size;
}
