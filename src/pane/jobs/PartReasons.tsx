/** One row of the kit book and what it asks of each opening. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import type { Opening } from "../../core/openings/opening";
import { openingAt, type Count } from "../../core/takeoff/take";
import { formulasOf, quantityOf, type PartFormula } from "../../core/takeoff/explain";
import { Disclosure } from "../parts/Disclosure";
import { sourceWords } from "../parts/quantities";
import { useSharedStyles } from "../parts/parts.styles";
import { PlaceButton } from "../parts/PlaceButton";
import { countText } from "../parts/quantities";
import { useMore } from "../parts/useMore";
import { CountDetail } from "./CountDetail";
import { Formula } from "./Formula";
import type { PartGroup } from "./partGroups";
import { tokens } from "../parts/tokens";
import { SmallButton } from "../parts/SmallButton";

const useStyles = makeStyles({
  group: { overflow: "hidden" },
  head: {
    display: "flex",
    flexDirection: "column",
    gap: tokens.spacingVerticalXS,
    padding: `${tokens.spacingVerticalS} ${tokens.spacingHorizontalM}`,
    borderBottom: `1px solid ${tokens.colorNeutralStroke3}`,
  },
  title: { display: "flex", justifyContent: "space-between", gap: tokens.spacingHorizontalM },
  row: { display: "flex", alignItems: "center", flexWrap: "wrap", gap: tokens.spacingHorizontalS },
  opening: { display: "flex", justifyContent: "space-between", gap: tokens.spacingHorizontalM },
  openings: { padding: `${tokens.spacingVerticalXXS} ${tokens.spacingHorizontalXS}` },
  more: { padding: tokens.spacingHorizontalS },
});

type Question = { readonly answers: PartFormula["answers"]; readonly words: string };

const questions: readonly Question[] = [
  { answers: "item", words: "Which item" },
  { answers: "size", words: "What size" },
  { answers: "quantity", words: "How many" },
  { answers: "when", words: "Needed when" },
];

const firstOpenings = 20;
const moreOpenings = 100;

export type PartReasonsProps = {
  readonly group: PartGroup;
  readonly onOpening: (opening: Opening) => void;
};

export function PartReasons({ group, onOpening }: PartReasonsProps) {
  const { part, counts, quantity } = group;
  const styles = useStyles();
  const shared = useSharedStyles();
  const { shown, left, showMore } = useMore(counts, firstOpenings, moreOpenings);
  const { source, bag, basis } = part;
  const type = counts[0]?.take.type.name ?? "";
  return (
    <section className={mergeClasses(shared.card, styles.group)}>
      <div className={styles.head}>
        <h3 className={mergeClasses(shared.subheading, styles.title)}>
          <span>{bag === "" ? type : `${bag}, ${type}`}</span>
          <span className={shared.number}>{countText(quantity)} pcs</span>
        </h3>
        <div className={mergeClasses(shared.small, styles.row)}>
          {sourceWords(source)}
          {source.place === null ? null : <PlaceButton place={source.place} />}
        </div>
        {questions.map(({ answers, words }) => (
          <PartAnswer key={answers} part={part} answers={answers} words={words} />
        ))}
        {basis === "" ? null : <div className={shared.small}>Basis: {basis}</div>}
      </div>
      <ul className={mergeClasses(shared.list, styles.openings)}>
        {shown.map((count) => (
          <li
            key={`${openingAt(count.take, count.row).place.sheet} ${openingAt(count.take, count.row).place.row}`}
          >
            <Disclosure label={<OpeningLabel count={count} />}>
              {() => <CountDetail count={count} onOpening={onOpening} />}
            </Disclosure>
          </li>
        ))}
      </ul>
      {left === 0 ? null : (
        <div className={styles.more}>
          <SmallButton onClick={showMore}>Show more ({countText(left)})</SmallButton>
        </div>
      )}
    </section>
  );
}

/** A size of width and height is one answer with a formula for each. */
function PartAnswer({ part, answers, words }: Question & Pick<PartGroup, "part">) {
  const texts = formulasOf(part).flatMap((each) =>
    each.answers === answers ? [each.formula.text] : [],
  );
  return texts.length === 0 ? null : <Formula name={words} text={texts.join(" x ")} />;
}

function OpeningLabel({ count }: { readonly count: Count }) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { mark, quantity } = openingAt(count.take, count.row);
  const alike = quantity === 1 ? "" : `${countText(count.each)} × ${countText(quantity)} alike = `;
  return (
    <span className={styles.opening}>
      <span>{mark}</span>
      <span className={shared.number}>
        {alike}
        {countText(quantityOf(count))} pcs
      </span>
    </span>
  );
}
