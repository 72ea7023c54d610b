/** Keeps the focus with a person when what had it goes away. */
import { useState } from "react";

/** What `Pane` marks its outermost element with. */
export const paneMark = "data-cribsheet-pane";

/**
 * A ref that gives its element the focus when it appears, where that was wanted then. A person who
 * is at work in the spreadsheet by that time stays there.
 */
export function useFocusOnAppear(wanted: boolean): (element: HTMLElement | null) => void {
  const [focus] = useState(() => (element: HTMLElement | null) => {
    if (wanted && element !== null && !isElsewhere(element)) element.focus();
  });
  return focus;
}

function isElsewhere(element: HTMLElement): boolean {
  const at = document.activeElement;
  return (
    at !== null && at !== document.body && element.closest(`[${paneMark}]`)?.contains(at) !== true
  );
}
