import { useEffect, useRef, useState } from 'preact/hooks';

export interface Size {
  readonly widthPx: number;
  readonly heightPx: number;
}

/** The size of an element, followed as it changes; null until it is known. */
export function useSize<Kind extends Element>() {
  const element = useRef<Kind>(null);
  const [size, setSize] = useState<Size | null>(null);
  useEffect(() => {
    if (!element.current) return;
    const observer = new ResizeObserver((entries) => {
      const box = entries[0]?.contentRect;
      if (box && box.width > 0 && box.height > 0) setSize({ widthPx: box.width, heightPx: box.height });
    });
    observer.observe(element.current);
    return () => observer.disconnect();
  }, []);
  return { element, size };
}
