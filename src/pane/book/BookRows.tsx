/** The rows of one opening type, a section at a time. */
import { Field, Select } from "@fluentui/react-components";
import { useMemo, useState } from "react";
import type { KitBookAtHand } from "../../app/kitbook/kitBookAtHand";
import type { OpeningType } from "../../core/kitbook/kitBook";
import { kitBookSections } from "../../core/kitbook/rows";
import { shownRows } from "./rowsOfType";
import { MoreList } from "./MoreList";
import { RowCard } from "./RowCard";

export type BookRowsProps = { readonly hand: KitBookAtHand; readonly type: OpeningType };

const sectionWords = {
  sizes: "Sizes that are worked out",
  parts: "Parts that it needs",
  limits: "Limits",
  charts: "Charts that it looks into",
} as const;

export function BookRows({ hand, type }: BookRowsProps) {
  const [section, setSection] = useState<(typeof kitBookSections)[number]>("parts");
  const bySection = useMemo(
    () => new Map(kitBookSections.map((each) => [each, shownRows(hand, type, each)])),
    [hand, type],
  );
  return (
    <>
      <Field label="Rows">
        <Select
          value={section}
          onChange={(_, { value }) => {
            const chosen = kitBookSections.find((each) => each === value);
            if (chosen !== undefined) setSection(chosen);
          }}
        >
          {kitBookSections.map((each) => (
            <option key={each} value={each}>
              {sectionWords[each]} ({bySection.get(each)?.length ?? 0})
            </option>
          ))}
        </Select>
      </Field>
      <MoreList key={`${type.name} ${section}`} items={bySection.get(section) ?? []}>
        {(row) => <RowCard key={row.number} row={row} />}
      </MoreList>
    </>
  );
}
