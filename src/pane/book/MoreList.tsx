/** A list of cards shown a page at a time. */
import { mergeClasses } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useSharedStyles } from "../parts/parts.styles";
import { countText } from "../parts/quantities";
import { SmallButton } from "../parts/SmallButton";
import { useMore } from "../parts/useMore";

export type MoreListProps<Item> = {
  readonly items: readonly Item[];
  readonly first?: number;
  /** Each makes its own `li`. */
  readonly children: (item: Item, index: number) => ReactNode;
};

export function MoreList<Item>({ items, first = 20, children }: MoreListProps<Item>) {
  const shared = useSharedStyles();
  const { shown, left, showMore } = useMore(items, first);
  return (
    <ul className={mergeClasses(shared.list, shared.stack)}>
      {shown.map(children)}
      {left === 0 ? null : (
        <li>
          <SmallButton onClick={showMore}>Show more ({countText(left)})</SmallButton>
        </li>
      )}
    </ul>
  );
}
