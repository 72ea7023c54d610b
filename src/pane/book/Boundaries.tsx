/** The exact values of a chosen field at which the kit book says anything else, all other fields being given. */
import { Field as Labelled, mergeClasses, Select } from "@fluentui/react-components";
import { useCallback, useState } from "react";
import { boundaryDrawing } from "../../app/kitbook/bookSheets";
import type { KitBookAtHand } from "../../app/kitbook/kitBookAtHand";
import { inches } from "../../core/base/units";
import {
  allSizes,
  boundariesInSteps,
  type Boundary,
  type BoundaryTable,
} from "../../core/bookcheck/boundaries";
import { boundaryLines, type BoundaryLine } from "../../core/bookcheck/boundaryLines";
import type { Field } from "../../core/kitbook/fields";
import type { OpeningType } from "../../core/kitbook/kitBook";
import type { Opening } from "../../core/openings/opening";
import { numberText, valueText } from "../../core/takeoff/describe";
import { proofWords } from "../../sheets/kitbook/boundarySheet";
import { useSharedStyles } from "../parts/parts.styles";
import { useBookStyles } from "./book.styles";
import { MoreList } from "./MoreList";
import { useSteps } from "./useSteps";
import type { TriedOpening } from "./useTriedOpening";
import { Worked } from "./Worked";
import { WriteOne } from "./WriteOne";

export type BoundariesProps = { readonly hand: KitBookAtHand; readonly tried: TriedOpening };

export function Boundaries({ hand, tried }: BoundariesProps) {
  const shared = useSharedStyles();
  const [name, setName] = useState("width");
  const { type, fields, one } = tried;
  const numbers = fields.filter(({ kind }) => kind !== "text" && kind !== "yesNo");
  const field = numbers.find((each) => each.name === name) ?? numbers[0];
  const { opening } = one.read;
  if (field === undefined) return <div>No number makes a difference to this type.</div>;
  const others = fields.filter((each) => each.name !== field.name);
  return (
    <>
      <Labelled label="Field">
        <Select value={field.name} onChange={(_, { value }) => setName(value)}>
          {numbers.map((each) => (
            <option key={each.name} value={each.name}>
              {each.label}
            </option>
          ))}
        </Select>
      </Labelled>
      {opening === null ? (
        <div>Under “Try a size”, correct the opening first: its other fields are kept here.</div>
      ) : (
        <>
          <div className={shared.small}>
            With the opening of “Try a size”:{" "}
            {others
              .map(
                ({ name: key, label, kind }) =>
                  `${label} ${valueText(opening.fields[key] ?? null, kind, hand.show)}`,
              )
              .join(", ")}
            .
          </div>
          <BoundaryList hand={hand} type={type} opening={opening} field={field} />
        </>
      )}
    </>
  );
}

type BoundaryListProps = {
  readonly hand: KitBookAtHand;
  readonly type: OpeningType;
  readonly opening: Opening;
  readonly field: Field;
};

function BoundaryList({ hand, type, opening, field }: BoundaryListProps) {
  const shared = useSharedStyles();
  const { book, show } = hand;
  const steps = useSteps(
    useCallback(
      () => boundariesInSteps({ book, type, opening, field: field.name, domain: allSizes, show }),
      [book, type, opening, field, show],
    ),
  );
  return (
    <Worked name="Working out the boundaries" steps={steps}>
      {(table: BoundaryTable) => (
        <>
          {table.boundaries.length === 0 ? <div>Nothing changes.</div> : null}
          <MoreList items={table.boundaries}>
            {(boundary) => (
              <BoundaryCard key={boundary.value} boundary={boundary} field={field} hand={hand} />
            )}
          </MoreList>
          <div className={shared.small}>{proofWords(table)}</div>
          <WriteOne
            label="Write these boundaries as a sheet"
            draw={() => boundaryDrawing(hand, { type, opening, field }, table)}
          />
        </>
      )}
    </Worked>
  );
}

const goesWithWords = {
  below: "It goes with what is below it.",
  above: "It goes with what is above it.",
  neither: "It is a case of its own.",
} as const;

type BoundaryCardProps = {
  readonly boundary: Boundary;
  readonly field: Field;
  readonly hand: KitBookAtHand;
};

function BoundaryCard({ boundary, field, hand }: BoundaryCardProps) {
  const styles = useBookStyles();
  const shared = useSharedStyles();
  const { value, goesWith } = boundary;
  const isLength = field.kind === "length";
  return (
    <li className={mergeClasses(shared.card, styles.row)}>
      <div className={styles.head}>
        <span className={shared.strong}>
          {field.label} {isLength ? hand.show(inches(value)) : numberText(value)}
        </span>
        {isLength ? (
          <span className={mergeClasses(shared.small, shared.number)}>{numberText(value)} in</span>
        ) : null}
      </div>
      <div className={shared.small}>{goesWithWords[goesWith]}</div>
      <ul className={shared.list}>
        {boundaryLines(boundary).map((line) => (
          <li key={`${line.kind} ${line.what}`} className={styles.head}>
            <span className={styles.name}>{line.what}</span>
            <span className={mergeClasses(shared.number, shared.strong, styles.end)}>
              <LineSides line={line} isOwnCase={goesWith === "neither"} />
            </span>
          </li>
        ))}
      </ul>
    </li>
  );
}

function LineSides({
  line: { below, at, above },
  isOwnCase,
}: {
  readonly line: BoundaryLine;
  readonly isOwnCase: boolean;
}) {
  const shared = useSharedStyles();
  const sides = isOwnCase ? [below, at, above] : [below, above];
  return sides.map((side, index) => (
    <span key={index}>
      {index === 0 ? null : (
        <>
          <span aria-hidden> → </span>
          <span className={shared.hidden}> then </span>
        </>
      )}
      {side}
    </span>
  ));
}
