/** What an owner types to see what would become of a job, and what it is read as. */
import type { TypedChanges, TypedWhatIf } from "../../app/pricing/keptWhatIfs";
import type { JobToChange } from "../../app/pricing/whatIfJobs";
import { makeFinding, type Finding, type FindingTable } from "../../core/base/finding";
import { cents, type Cents } from "../../core/base/units";
import { unitCostPlaces, type Currency } from "../../core/money/currency";
import { priceFinding } from "../../core/money/moneyFindings";
import { readPrice } from "../../core/money/price";
import { costByPrice } from "../../core/pricing/keepTarget";
import { priceByMargin, priceByMarkup } from "../../core/pricing/margin";
import { inPercent, noPercent, readPercent, type Percent } from "../../core/pricing/rates/percent";
import { readPricePercent } from "../../core/pricing/rollup/priceRule";
import {
  asEstimated,
  factorName,
  factorsOf,
  rollUpIf,
  withFactor,
  type Factor,
  type WhatIf,
} from "../../core/pricing/chances/whatIf";

const changeFindings = {
  "change-not-a-percentage": {
    level: "stop",
    says: "{found} is not a percentage.",
    todo: "Type one such as 5 or -3.",
  },
  "change-out-of-range": {
    level: "stop",
    says: "{found} is out of range.",
    todo: "Type a change from -100 to {most}.",
  },
} as const satisfies FindingTable;

export type ReadWhatIf = {
  readonly whatIf: WhatIf;
  /** By `factorName`: why a change was not taken. */
  readonly faults: ReadonlyMap<string, Finding>;
  /** About the price at which the job would be won. */
  readonly winFindings: readonly Finding[];
};

export type ReadChanges = Pick<ReadWhatIf, "whatIf" | "faults">;

/** The changes of some figures; `price` says whether the price follows them. */
export function readChanges(
  changes: TypedChanges,
  factors: readonly Factor[],
  price: WhatIf["price"],
): ReadChanges {
  const faults = new Map<string, Finding>();
  let whatIf: WhatIf = { ...asEstimated, price };
  for (const factor of factors) {
    const read = readChange(changes.get(factorName(factor)) ?? "", factor);
    if (typeof read === "object") faults.set(factorName(factor), read);
    else whatIf = withFactor(whatIf, factor, read);
  }
  return { whatIf, faults };
}

/** What cannot be read is as estimated, and told. */
export function readWhatIf(typed: TypedWhatIf, job: JobToChange, currency: Currency): ReadWhatIf {
  const { whatIf, faults } = readChanges(typed.changes, factorsOf(job.input), typed.price);
  const win = readWin(typed, job, whatIf, currency);
  return {
    whatIf: { ...whatIf, winPrice: win.price },
    faults,
    winFindings: win.findings,
  };
}

const mostChange = (factor: Factor): number => (factor.kind === "discount" ? 100 : 1000);

/** The change, or why it cannot be used. A blank is none. */
function readChange(text: string, factor: Factor): Percent | Finding {
  if (text.trim() === "") return noPercent;
  const read = readPercent(text);
  if (read === null) return makeFinding(changeFindings, "change-not-a-percentage", { found: text });
  const most = mostChange(factor);
  const change = inPercent(read.percent);
  if (change >= -100 && change <= most) return read.percent;
  return makeFinding(changeFindings, "change-out-of-range", { found: text, values: { most } });
}

type Win = { readonly price: Cents | null; readonly findings: readonly Finding[] };

/** A price as such, or by markup or margin of what the job costs with the changes. */
function readWin(
  { win, winWay }: TypedWhatIf,
  { job, input, rollUp, target }: JobToChange,
  changes: WhatIf,
  currency: Currency,
): Win {
  if (win.trim() === "") return { price: null, findings: [] };
  if (winWay === "price") {
    const read = readPrice(win, currency);
    if (!read.ok) {
      const finding = priceFinding(read.error, { place: null, found: win, job });
      return { price: null, findings: [finding] };
    }
    const minor = read.value.unitCost / 10 ** (unitCostPlaces - currency.digits);
    return { price: cents(Math.round(minor)), findings: [] };
  }
  const asked = { kind: winWay, typed: win, place: null, job };
  const { percent, findings } = readPricePercent(asked, target);
  if (percent === null) return { price: null, findings };
  const { fixed, bondOnPrice } = costByPrice(rollUpIf(input, rollUp, changes));
  const byWay = winWay === "markup" ? priceByMarkup : priceByMargin;
  return { price: byWay(fixed, percent, bondOnPrice), findings };
}
