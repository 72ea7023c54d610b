/** A row of the kit book by name, with the way to its cell where it has one. */
import { rowName } from "../../core/bookcheck/rowName";
import type { RowSource } from "../../core/kitbook/kitBook";
import { useSharedStyles } from "../parts/parts.styles";
import { PlaceButton } from "../parts/PlaceButton";

export function RowPlace({ source }: { readonly source: RowSource }) {
  const shared = useSharedStyles();
  return source.place === null ? (
    <span className={shared.small}>{rowName(source)}</span>
  ) : (
    <PlaceButton place={source.place} of={rowName(source)} />
  );
}
