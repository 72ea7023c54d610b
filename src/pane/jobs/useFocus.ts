/** Keeps the focus with a person who goes in and out of a job. */
import { useState } from "react";

/** A ref that gives its element the focus when it appears, where that was wanted then. */
export function useFocusOnAppear(wanted: boolean): (element: HTMLElement | null) => void {
  const [focus] = useState(() => (element: HTMLElement | null) => {
    if (wanted) element?.focus();
  });
  return focus;
}
