/** The take-off as text that a person reads in a terminal. */
import { findingCell, findingLevels, type Finding } from "../../core/base/finding";
import { correctionWords, isAdded } from "../../core/corrections/correctedLine";
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import type { Currency } from "../../core/money/currency";
import { moneyText } from "../../core/money/writeMoney";
import type { LengthStyle } from "../../core/lengths/writeLength";
import { measureStyleOf, type MeasureStyle } from "../../core/measures/measures";
import { shownAmount, shownUnit, withCommas } from "../../core/measures/writeMeasure";
import { sizeTexts } from "../../core/takeoff/sizeTexts";
import { caution } from "../../sheets/caution";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import { textTable } from "./textTable";

/** Every job with its lines and totals, then the findings, then the caution. */
export function takeOffText(
  { estimate, findings, complete }: WorkbookTakeOff,
  lengths: LengthStyle,
  currency: Currency,
): string {
  const lines = [
    ...estimate.jobs.flatMap((job) => [...jobText(job, lengths, currency), ""]),
    ...findingsText(findings),
    "",
    complete ? "All openings were counted." : "NOT COMPLETE: see the stops above.",
    caution,
  ];
  return lines.join("\n");
}

function jobText(job: JobEstimate, lengths: LengthStyle, currency: Currency): readonly string[] {
  const { material } = job;
  const sizeText = sizeTexts(job.takeOff.lines, lengths);
  const counted = job.rows - job.uncounted.length;
  const uncounted = job.uncounted.map((row) => row.mark).join(", ");
  return [
    `${job.job}: ${counted} of ${job.rows} openings counted`,
    ...(uncounted === "" ? [] : [`  NOT COUNTED: ${uncounted}`]),
    ...textTable(
      [
        { heading: "Item", align: "left" },
        { heading: "Size", align: "right" },
        { heading: "Pcs", align: "right" },
        { heading: "Spares", align: "right" },
        { heading: "To order", align: "right" },
        { heading: "Cost", align: "right" },
        { heading: "Description", align: "left" },
      ],
      material.lines.map(({ line, item, spares, toOrder, cost }) => [
        line.item,
        sizeText(line),
        String(line.quantity),
        String(spares),
        String(toOrder),
        cost === null ? "not priced" : moneyText(cost, currency),
        item?.description ?? "not in the items table",
      ]),
    ).map((line) => `  ${line}`),
    ...material.lines.flatMap(({ line }) => {
      const words = correctionWords(line);
      const size = sizeText(line);
      const name = size === "" ? line.item : `${line.item} ${size}`;
      return words === ""
        ? []
        : [`  ${name}: ${isAdded(line) ? "" : `${line.counted} counted, `}${words}`];
    }),
    ...material.families.map(({ family, cost }) => `  ${family}: ${moneyText(cost, currency)}`),
    `  Material: ${material.total === null ? "nothing could be priced" : moneyText(material.total, currency)}` +
      (material.unpriced.length === 0
        ? ""
        : `, without ${material.unpriced.join(", ")} (not priced)`),
    `  Weight: ${weightWords(material.weight, measureStyleOf(lengths))}` +
      (material.unweighed.length === 0
        ? ""
        : `, without ${material.unweighed.join(", ")} (not weighed)`),
  ];
}

const weightWords = (weight: number, style: MeasureStyle): string =>
  `${withCommas(shownAmount(weight, "weight", style).toFixed(1))} ${shownUnit("weight", style).name}`;

const levelWords = { stop: "STOP", warn: "WARNING", note: "note" } as const;

/** The worst first; findings that say the same of several openings share a line. */
export function findingsText(findings: readonly Finding[]): readonly string[] {
  const same = new Map<string, Finding[]>();
  for (const finding of findings) {
    const key = `${finding.level} ${finding.message}`;
    same.set(key, [...(same.get(key) ?? []), finding]);
  }
  return findingLevels.flatMap((level) =>
    [...same.values()]
      .filter(([first]) => first?.level === level)
      .map((group) => `${levelWords[level]}${placesText(group)}: ${group[0]?.message ?? ""}`),
  );
}

const mostNamed = 6;

function placesText(group: readonly Finding[]): string {
  const places = group
    .map((finding) =>
      [findingCell(finding), finding.mark ?? ""].filter((part) => part !== "").join(" "),
    )
    .filter((place) => place !== "");
  const named = places.slice(0, mostNamed).join(", ");
  const more = places.length - mostNamed;
  return places.length === 0 ? "" : ` ${named}${more > 0 ? ` and ${more} more` : ""}`;
}
