/** How wide an element is, kept up while the pane changes its size. */
import { useEffect, useState } from "react";

/** CSS pixels; `first` until it is known. */
export function useWidth(first: number): readonly [number, (element: HTMLElement | null) => void] {
  const [width, setWidth] = useState(first);
  const [element, setElement] = useState<HTMLElement | null>(null);
  useEffect(() => {
    if (element === null) return undefined;
    const observer = new ResizeObserver(([entry]) => {
      const measured = Math.floor(entry?.contentRect.width ?? 0);
      if (measured > 0) setWidth(measured);
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, [element]);
  return [width, setElement];
}
