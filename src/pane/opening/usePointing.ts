/** What of a picture and its list is lit: what is pointed at, else what has the focus, else what was pressed. */
import { useRef, useState } from "react";

/** A line of the list by its key, or a place of the picture by its id. */
export type Lit = { readonly kind: "line" | "place"; readonly key: string };

export type Pointing = {
  readonly lit: Lit | null;
  /** What stays lit until it is pressed again. */
  readonly kept: Lit | null;
  readonly point: (at: Lit | null) => void;
  /** Only a focus that keys brought lights anything: a tap is a press. */
  readonly focus: (at: Lit | null) => void;
  readonly press: (at: Lit) => void;
  readonly letGo: () => void;
  /** For the element around both: told whether keys or a pointer are used. */
  readonly listeners: { readonly onPointerDown: () => void; readonly onKeyDown: () => void };
};

export function usePointing(): Pointing {
  const [pointed, setPointed] = useState<Lit | null>(null);
  const [focused, setFocused] = useState<Lit | null>(null);
  const [kept, setKept] = useState<Lit | null>(null);
  const isByKeys = useRef(true);
  return {
    lit: pointed ?? focused ?? kept,
    kept,
    point: (at) => setPointed((before) => (isSame(before, at) ? before : at)),
    focus: (at) => setFocused(isByKeys.current ? at : null),
    press: (at) => setKept((before) => (isSame(before, at) ? null : at)),
    letGo: () => {
      setFocused(null);
      setKept(null);
    },
    listeners: {
      onPointerDown: () => {
        isByKeys.current = false;
      },
      onKeyDown: () => {
        isByKeys.current = true;
      },
    },
  };
}

export const isSame = (one: Lit | null, other: Lit | null): boolean =>
  one?.kind === other?.kind && one?.key === other?.key;
