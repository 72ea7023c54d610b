/** A long list shown a page at a time. */
import { useState } from "react";

export type More<Item> = {
  readonly shown: readonly Item[];
  /** How many are not shown. */
  readonly left: number;
  readonly showMore: () => void;
};

export function useMore<Item>(items: readonly Item[], first: number, step = first): More<Item> {
  const [count, setCount] = useState(first);
  return {
    shown: items.slice(0, count),
    left: Math.max(0, items.length - count),
    showMore: () => setCount(count + step),
  };
}
