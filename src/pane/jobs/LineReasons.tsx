/** Why a line's quantity is what it is: by kit-book row, then by opening, down to the numbers put in. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import { useMemo } from "react";
import { currencyIn, lengthStyleOf } from "../../app/settings";
import { writeSize } from "../../core/lengths/writeLength";
import { moneyText, unitCostText } from "../../core/money/writeMoney";
import type { Opening } from "../../core/openings/opening";
import type { MaterialLine } from "../../core/pricing/material";
import { useSharedStyles } from "../parts/parts.styles";
import { counted, countText } from "../parts/quantities";
import { usePane } from "../state/paneContext";
import { BackButton } from "./BackButton";
import { PartReasons } from "./PartReasons";
import { partGroups } from "./partGroups";
import { useFocusOnAppear } from "../parts/useFocusOnAppear";
import { tokens } from "../parts/tokens";

const useStyles = makeStyles({
  sums: {
    display: "grid",
    gridTemplateColumns: "1fr auto",
    gap: `${tokens.spacingVerticalXXS} ${tokens.spacingHorizontalM}`,
    margin: 0,
    padding: `${tokens.spacingVerticalS} ${tokens.spacingHorizontalM}`,
  },
  value: { margin: 0 },
  total: { fontWeight: tokens.fontWeightSemibold },
});

export type LineReasonsProps = {
  readonly job: string;
  readonly line: MaterialLine;
  readonly onBack: () => void;
  readonly onOpening: (opening: Opening) => void;
};

export function LineReasons({ job, line: material, onBack, onOpening }: LineReasonsProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { settings } = usePane().state;
  const { line, item } = material;
  const groups = useMemo(() => partGroups(line.counts), [line.counts]);
  const size = writeSize(line.size, lengthStyleOf(settings));
  return (
    <div className={shared.stack}>
      <div>
        <BackButton to={job} onBack={onBack} />
        <h2 tabIndex={-1} ref={useFocusOnAppear(true)} className={shared.heading}>
          {item?.description ?? line.item}
        </h2>
        <div className={shared.small}>
          {[size, line.item].filter((words) => words !== "").join(" · ")}
        </div>
      </div>
      <dl className={mergeClasses(shared.card, styles.sums)}>
        {sumsOf(material, currencyIn(settings)).map(([name, value], index, all) => (
          <Sum key={name} name={name} value={value} isTotal={index === all.length - 1} />
        ))}
      </dl>
      {groups.map((group) => (
        <PartReasons
          key={`${group.part.source.number} ${group.counts[0]?.take.type.name ?? ""}`}
          group={group}
          onOpening={onOpening}
        />
      ))}
    </div>
  );
}

type SumProps = { readonly name: string; readonly value: string; readonly isTotal: boolean };

function Sum({ name, value, isTotal }: SumProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const total = isTotal && styles.total;
  return (
    <>
      <dt className={mergeClasses(total)}>{name}</dt>
      <dd className={mergeClasses(styles.value, shared.number, total)}>{value}</dd>
    </>
  );
}

/** From the count to the cost, one step a row. */
function sumsOf(
  { line, item, spares, toOrder, unitsEach, cost }: MaterialLine,
  currency: ReturnType<typeof currencyIn>,
): readonly (readonly [string, string])[] {
  const unit = item?.unit.label ?? "";
  const unitCost = item?.unitCost ?? null;
  return [
    ["Counted", `${countText(line.quantity)} pcs`],
    ["Spares", `${countText(spares)} pcs`],
    ["To order", `${countText(toOrder)} pcs`],
    ...(unitsEach === null || unitsEach === 1
      ? []
      : [["In each piece", counted(unitsEach, unit, unit)] as const]),
    [
      "Unit cost",
      unitCost === null ? "not known" : `${unitCostText(unitCost, currency)} / ${unit}`,
    ],
    ["Cost", cost === null ? "not priced" : moneyText(cost, currency)],
  ];
}
