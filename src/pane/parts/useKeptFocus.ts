/** The keyboard stays with a person when the control they were at is gone. */
import { useEffect, useRef, type RefObject } from "react";

/** What can have the keyboard from `target` outwards, up to `root`, which is left out. */
export function focusPath(target: EventTarget | null, root: HTMLElement): readonly HTMLElement[] {
  const path: HTMLElement[] = [];
  let each = target instanceof HTMLElement ? target : null;
  for (; each !== null && each !== root; each = each.parentElement) {
    if (each.tabIndex >= 0) path.push(each);
  }
  return path;
}

/** Whether it is still there and not hidden, as what waits for something to load is. */
const isLeft = (element: HTMLElement): boolean =>
  element.isConnected && element.closest("[hidden], [style*='display: none']") === null;

/** The first of a path that is still there and not hidden. */
export const firstLeft = (path: readonly HTMLElement[]): HTMLElement | undefined =>
  path.find(isLeft);

/**
 * For the outermost element: when the control with the keyboard is taken away or hidden, as the
 * finding is that was just mended, the nearest around it takes over. Else the next Tab would begin at the top.
 */
export function useKeptFocus(): RefObject<HTMLDivElement | null> {
  const ref = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const root = ref.current;
    if (root === null) return;
    let path: readonly HTMLElement[] = [];
    const onFocus = ({ target }: FocusEvent): void => {
      path = focusPath(target, root);
    };
    const observer = new MutationObserver(() => {
      const [last] = path;
      const at = document.activeElement;
      if (last === undefined || isLeft(last) || !document.hasFocus()) return;
      if (at === last || at === document.body) firstLeft(path)?.focus({ preventScroll: true });
    });
    root.addEventListener("focusin", onFocus);
    const attributeFilter = ["hidden", "style"];
    observer.observe(root, { childList: true, subtree: true, attributeFilter });
    return () => {
      root.removeEventListener("focusin", onFocus);
      observer.disconnect();
    };
  }, []);
  return ref;
}
