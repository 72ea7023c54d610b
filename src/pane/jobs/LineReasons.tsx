/** Why a line's quantity is what it is: by kit-book row, then by opening, down to the numbers put in. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import { useMemo } from "react";
import type { Inputs } from "../../app/reading/inputs";
import { currencyIn, lengthStyleOf } from "../../app/settings";
import { cellText, type CellPlace } from "../../core/base/cell";
import { writeChange } from "../../core/corrections/change";
import { correctionWords, isAdded, type CorrectedLine } from "../../core/corrections/correctedLine";
import { lineName } from "../../core/corrections/rowName";
import { writeSize } from "../../core/lengths/writeLength";
import { moneyText, unitCostText } from "../../core/money/writeMoney";
import type { Opening } from "../../core/openings/opening";
import { itemKey } from "../../core/pricing/item";
import { severalOf } from "../../core/pricing/itemUnit";
import type { MaterialLine } from "../../core/pricing/material";
import { useSharedStyles } from "../parts/parts.styles";
import { PlaceButton } from "../parts/PlaceButton";
import { counted, countText } from "../parts/quantities";
import { usePane } from "../state/paneContext";
import { BackButton } from "./BackButton";
import type { CorrectionPlaceOf } from "./correctionPlaces";
import { PartReasons } from "./PartReasons";
import { partGroups } from "./partGroups";
import { useFocusOnAppear } from "../parts/useFocusOnAppear";
import { tokens } from "../parts/tokens";

const useStyles = makeStyles({
  sums: {
    display: "grid",
    gridTemplateColumns: "1fr auto",
    alignItems: "baseline",
    gap: `${tokens.spacingVerticalXXS} ${tokens.spacingHorizontalM}`,
    margin: 0,
    padding: `${tokens.spacingVerticalS} ${tokens.spacingHorizontalM}`,
  },
  value: { margin: 0 },
  correction: {
    display: "flex",
    flexWrap: "wrap",
    alignItems: "center",
    gap: tokens.spacingHorizontalS,
    overflowWrap: "anywhere",
  },
  total: { fontWeight: tokens.fontWeightSemibold },
});

export type LineReasonsProps = {
  readonly job: string;
  readonly line: MaterialLine;
  readonly placeOf: CorrectionPlaceOf;
  readonly onBack: () => void;
  readonly onOpening: (opening: Opening) => void;
};

export function LineReasons(props: LineReasonsProps) {
  const { job, line: material, placeOf, onBack, onOpening } = props;
  const styles = useStyles();
  const shared = useSharedStyles();
  const { settings, takeOff } = usePane().state;
  const { line, item } = material;
  const costPlace = takeOff === null ? null : unitCostPlace(takeOff.inputs, line.item);
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
          <Sum
            key={name}
            name={name}
            value={value}
            place={name === unitCostName ? costPlace : null}
            isTotal={index === all.length - 1}
          />
        ))}
      </dl>
      <Correction job={job} line={line} placeOf={placeOf} />
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

type CorrectionProps = Pick<LineReasonsProps, "job" | "placeOf"> & {
  readonly line: CorrectedLine;
};

/** Who corrected it and why, and the cell to do it in. */
function Correction({ job, line, placeOf }: CorrectionProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const place = placeOf(line.typed?.name ?? lineName(job, line));
  const words = correctionWords(line);
  return (
    <div className={mergeClasses(shared.small, styles.correction)}>
      <span>
        {words === ""
          ? place === null
            ? "To correct it by hand, write the hardware sheet and type there."
            : "To correct it by hand, type on the hardware sheet:"
          : `Typed by hand: ${words}`}
      </span>
      {place === null ? null : <PlaceButton place={place} />}
    </div>
  );
}

type SumProps = {
  readonly name: string;
  readonly value: string;
  /** Where the value is typed, if it is. */
  readonly place: CellPlace | null;
  readonly isTotal: boolean;
};

function Sum({ name, value, place, isTotal }: SumProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const total = isTotal && styles.total;
  return (
    <>
      <dt className={mergeClasses(total)}>{name}</dt>
      <dd className={mergeClasses(styles.value, shared.number, total)}>
        {place === null ? null : (
          <>
            <PlaceButton place={place} />{" "}
          </>
        )}
        {value}
      </dd>
    </>
  );
}

const unitCostName = "Unit cost";

/** The cell of an item's unit cost, where the workbook has an items table of its own. */
function unitCostPlace({ items, hasItemsSheet }: Inputs, code: string): CellPlace | null {
  const key = itemKey(code);
  const row = items.find((each) => itemKey(cellText(each.code.value)) === key);
  return hasItemsSheet ? (row?.unitCost?.place ?? null) : null;
}

/** From the count to the cost, one step a row. */
function sumsOf(
  { line, item, spares, toOrder, unitsEach, cost }: MaterialLine,
  currency: ReturnType<typeof currencyIn>,
): readonly (readonly [string, string])[] {
  const unit = item?.unit.label ?? "";
  const unitCost = item?.unitCost ?? null;
  return [
    ...quantitySums(line),
    [line.ownSpares === null ? "Spares" : "Spares, typed", `${countText(spares)} pcs`],
    ["To order", `${countText(toOrder)} pcs`],
    ...(item === null || unitsEach === null || unitsEach === 1
      ? []
      : [["In each piece", counted(unitsEach, unit, severalOf(item.unit))] as const]),
    [
      unitCostName,
      unitCost === null ? "not known" : `${unitCostText(unitCost, currency)} / ${unit}`,
    ],
    ["Cost", cost === null ? "not priced" : moneyText(cost, currency)],
  ];
}

/** As counted, or from the count to what a person made of it. */
function quantitySums(line: CorrectedLine): readonly (readonly [string, string])[] {
  const quantity = `${countText(line.quantity)} pcs`;
  if (isAdded(line)) return [["Added by hand", quantity]];
  if (line.change === null) return [["Counted", quantity]];
  return [
    ["Counted", `${countText(line.counted)} pcs`],
    ["Correction", writeChange(line.change)],
    ["Quantity", quantity],
  ];
}
