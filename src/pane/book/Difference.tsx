/** What the workbook's own kit book has otherwise than the starter. */
import { useMemo } from "react";
import type { KitBookAtHand } from "../../app/kitbook/kitBookAtHand";
import { compareBooks } from "../../core/bookcheck/compareBooks";
import { starterKitBook } from "../../core/kitbook/starter/starterKitBook";
import { counted } from "../parts/quantities";
import { ChangeCard } from "./ChangeCard";
import { MoreList } from "./MoreList";

export function Difference({ hand }: { readonly hand: KitBookAtHand }) {
  const changes = useMemo(() => compareBooks(starterKitBook, hand.rows), [hand]);
  if (changes.length === 0) return <div>Every row is as in the starter.</div>;
  return (
    <>
      <div>{counted(changes.length, "row is", "rows are")} not as in the starter.</div>
      <MoreList items={changes}>
        {(change) => (
          <ChangeCard key={`${change.section} ${change.before} ${change.after}`} change={change} />
        )}
      </MoreList>
    </>
  );
}
