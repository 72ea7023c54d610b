/**
 * The price of a job from its count and the firm's rates: hours, shipment and freight, then the
 * roll-up. Nothing is typed here; every figure comes from the take-off, the items or the rates.
 */
import { cellText, isBlank } from "../base/cell";
import { makeFinding, type Finding } from "../base/finding";
import { cents, inches, minutes, pieces, pounds, tenThousandths, type Cents } from "../base/units";
import { isFormulaError } from "../formulas/value";
import type { MeasureStyle } from "../measures/measures";
import type { Currency } from "../money/currency";
import { canExtend, extend } from "../money/amounts";
import { describeSource } from "../takeoff/describe";
import { minutesOf } from "../takeoff/explain";
import { countsIn, openingAt, type Count } from "../takeoff/take";
import type { JobTakeOff } from "../takeoff/takeOff";
import type { PricedAlternate } from "./alternates/alternates";
import {
  freightCharge,
  freightCost,
  type FreightBreak,
  type FreightCharge,
  type FreightTable,
} from "./freight";
import { jobHours, type JobHours, type OpeningWork } from "./hours";
import { alternatesOf, type AlternateToPrice } from "./alternates/jobAlternates";
import type { LabourRules } from "./rates/labourRules";
import type { PricedJob } from "./marginTable";
import { familyOf, type Material, type MaterialLine } from "./material";
import { noPercent, shareOf } from "./rates/percent";
import { priceFindings } from "./priceFindings";
import { atCost, priceMethods, readPricePercent, type PriceRule } from "./rollup/priceRule";
import { rateFindings, rateReader, type RateReader, type RateTable } from "./rates/rates";
import { rollUp } from "./rollup/rollUp";
import {
  directGroups,
  payers,
  type FamilyMaterial,
  type NamedCost,
  type RollUpInput,
} from "./rollup/rollUpInput";
import { shipmentWeight, type ShipmentWeight } from "./shipment";

export type JobPrice = PricedJob & {
  readonly job: string;
  readonly input: RollUpInput;
  readonly hours: JobHours;
  readonly shipment: ShipmentWeight;
  /** `null` where no freight rates are set. */
  readonly freight: FreightCharge | null;
  readonly alternates: readonly PricedAlternate[];
  readonly findings: readonly Finding[];
};

export type JobToPrice = {
  readonly job: string;
  readonly takeOff: JobTakeOff;
  readonly material: Material;
  /** Marks of openings that were not counted: their cost is in no figure. */
  readonly uncounted: readonly string[];
  /** The job's part of what suppliers added to goods ordered for it; none where absent. */
  readonly orderCharges?: Cents;
  /** Where those are from. */
  readonly orderChargesHow?: string;
  /** Those of this job; none where absent. */
  readonly alternates?: readonly CountedAlternate[];
};

/** What of a job to price an alternate counts otherwise; `counted` is `null` where it counts nothing anew. */
export type CountedAlternate = Omit<AlternateToPrice, "input"> & {
  readonly counted: Pick<JobToPrice, "takeOff" | "material" | "uncounted"> | null;
};

/** Prices one job. Total: what is missing or wrong is a finding, and named in `notPriced`. `style`: of words about weights. */
export function priceJob(
  toPrice: JobToPrice,
  rates: RateTable,
  currency: Currency,
  style: MeasureStyle = "pounds",
): JobPrice {
  const { job, takeOff, material, uncounted } = toPrice;
  const read = rateReader(rates, job, currency);
  const rules = labourRules(read);
  const work = workOf(takeOff);
  const hours = jobHours(
    { job, openings: work.openings, siteFactor: read.number("site") ?? 1 },
    rules,
  );
  const shipment = shipmentOf(material, read, style);
  const freight = freightOf(shipment, read, currency, style);
  const rule = priceRule(read, job);
  const bond = bondOf(read, job);
  const round = read.number("roundTo") ?? 0;
  const input: RollUpInput = {
    job,
    material: familiesOf(material),
    sparesPaidBy: read.choice("sparesPaidBy", payers),
    leftOverPaidBy: "stock",
    notPriced: [
      ...material.unpriced,
      ...uncounted.map((mark) => `opening ${mark}`),
      ...work.untimed.map(({ item }) => `hours of ${item}`),
      ...shipment.notWeighed.map((item) => `freight of ${item}`),
    ],
    freight: [
      freight === null
        ? { name: "Freight", kind: "typed", amount: null }
        : freightCost("Freight", freight, style),
      ...typedCost("Freight of orders", toPrice.orderCharges ?? null, toPrice.orderChargesHow),
    ],
    labour: hours.roles.map(({ role, hundredths }) => ({
      role,
      hundredths,
      rate: read.rate(role === leadRole ? "leadRate" : "installerRate"),
      burden: read.percent("burden") ?? noPercent,
    })),
    equipment: typedCost("Equipment", read.money("equipment")),
    subcontract: typedCost("Subcontract", read.money("subcontract")),
    allowance: typedCost("Allowances", read.money("allowance")),
    overhead: percentOn(read, "overhead", "overheadOf", directGroups),
    contingency: percentOn(read, "contingency", "contingencyOf", [...directGroups, "overhead"]),
    salesTax: salesTax(read),
    bond: bond.bond,
    price: rule.price,
    rounding: { step: Math.floor(round), way: read.choice("roundWay", ["up", "nearest"]) },
  };
  const rolled = rollUp(input);
  const target = read.percent("target") ?? noPercent;
  const dates = material.lines.flatMap(({ item }) => item?.priceDate ?? []);
  const invented = read.invented;
  return {
    job,
    input,
    rollUp: rolled,
    hours,
    shipment,
    freight,
    alternates: alternatesOf(
      { input, rollUp: rolled, target },
      (toPrice.alternates ?? []).map(({ counted, ...alternate }) => ({
        ...alternate,
        input:
          counted === null
            ? null
            : priceJob({ ...toPrice, ...counted, alternates: [] }, rates, currency, style).input,
      })),
    ),
    target,
    oldestPrice: dates.length === 0 ? null : Math.min(...dates),
    lines: material.lines.length,
    unpricedLines: material.lines.filter(({ cost }) => cost === null).length,
    findings: [
      ...read.findings,
      ...rule.findings,
      ...bond.findings,
      ...hours.findings,
      ...work.untimed.map(({ count, item, found }) => minutesNotKnown(count, item, found)),
      ...(invented.length === 0
        ? []
        : [
            makeFinding(rateFindings, "rates-are-invented", {
              job,
              values: { labels: invented.join(", ") },
            }),
          ]),
    ],
  };
}

const leadRole = "lead installer";

function labourRules(read: RateReader): LabourRules {
  const time = (name: string, key: Parameters<RateReader["number"]>[0]) => ({
    name,
    minutes: minutes(read.number(key) ?? 0),
  });
  const crew = [
    { role: leadRole, people: Math.floor(read.number("leadPeople") ?? 0) },
    { role: "installer", people: Math.floor(read.number("installerPeople") ?? 0) },
  ].filter(({ people }) => people > 0);
  const rate = read.percent("learning");
  const share = rate === null ? 1 : shareOf(rate);
  return {
    perOpening: [
      time("unpack and lay out", "unpackMinutes"),
      time("adjust and try", "adjustMinutes"),
    ],
    perJob: [
      { ...time("travel", "travelMinutes"), basis: "person and day" },
      { ...time("set up", "setUpMinutes"), basis: "day" },
      { ...time("clean up", "cleanUpMinutes"), basis: "day" },
    ],
    heights: [
      { above: inches(96), factor: read.number("above8") ?? 1 },
      { above: inches(120), factor: read.number("above10") ?? 1 },
    ],
    crew: crew.length > 0 ? crew : [{ role: leadRole, people: 1 }],
    day: minutes(Math.max(60, (read.number("dayHours") ?? 8) * 60)),
    learning: share > 0.5 && share < 1 ? { model: "unit", rate: share } : null,
    basis: "the rates sheet",
  };
}

type Untimed = { readonly count: Count; readonly item: string; readonly found: string };

/**
 * The work of each counted opening: the kit book's minutes for its rows. `untimed` is a count of each
 * row whose minutes could not be worked out.
 */
function workOf(takeOff: JobTakeOff): {
  readonly openings: readonly OpeningWork[];
  readonly untimed: readonly Untimed[];
} {
  const untimed = new Map<object, Untimed>();
  const byOpening = new Map<object, { count: Count; rows: OpeningWork["rows"][number][] }>();
  for (const line of takeOff.lines) {
    for (const count of countsIn(line.counts)) {
      const opening = openingAt(count.take, count.row);
      const work = byOpening.get(opening) ?? { count, rows: [] };
      const taken = minutesOf(count);
      if (!taken.ok) {
        const { part } = count;
        if (!untimed.has(part)) untimed.set(part, { count, item: line.item, found: taken.error });
      } else if (taken.value !== null) {
        // A blank in the book is work done with the part before it, such as the bolts of a bracket.
        work.rows.push({
          bag: count.part.bag,
          item: line.item,
          minutesEach: minutes(taken.value),
          times: 1,
          row: count.part.source.number,
        });
      }
      byOpening.set(opening, work);
    }
  }
  const openings = [...byOpening.values()].map(({ count, rows }): OpeningWork => {
    const { mark, quantity, fields } = openingAt(count.take, count.row);
    const post = fields["post_height"] ?? null;
    return {
      mark,
      quantity,
      workingHeight: typeof post === "number" && !isFormulaError(post) ? inches(post) : null,
      rows,
    };
  });
  return { openings, untimed: [...untimed.values()] };
}

function minutesNotKnown({ take, row, part }: Count, item: string, found: string): Finding {
  const { job, mark } = openingAt(take, row);
  const formula = part.minutes?.text ?? "";
  return makeFinding(priceFindings, "minutes-not-known", {
    place: part.minutes?.place ?? part.source.place,
    found,
    values: { row: `${describeSource(part.source)} (${item})`, mark, formula },
    job,
  });
}

function shipmentOf(material: Material, read: RateReader, style: MeasureStyle): ShipmentWeight {
  const carries = read.number("palletCarries");
  return shipmentWeight(
    material.lines.map(({ line, weight }) => ({
      name: line.item,
      weight: weight === null ? null : pounds(weight),
    })),
    carries === null || carries === 0
      ? null
      : {
          carries: pounds(carries),
          own: pounds(read.number("palletWeight") ?? 0),
          least: pieces(1),
        },
    style,
  );
}

function freightOf(
  { weight }: ShipmentWeight,
  read: RateReader,
  currency: Currency,
  style: MeasureStyle,
): FreightCharge | null {
  const found = (
    [
      [0, "freight0"],
      [500, "freight500"],
      [1000, "freight1000"],
      [2000, "freight2000"],
      [5000, "freight5000"],
    ] as const
  ).flatMap(([from, key]): FreightBreak[] => {
    const rate = read.rate(key);
    return rate === null ? [] : [{ from: pounds(from), rate: tenThousandths(rate) }];
  });
  const [first, ...others] = found;
  if (first === undefined) return null;
  const least = read.money("freightLeast") ?? cents(0);
  const breaks: FreightTable["breaks"] = [first, ...others];
  const table = { name: "Freight", breaks, least, basis: "the rates sheet" };
  return freightCharge(weight, table, currency, style);
}

/** Counted pieces and spares apart: what the line costs less what it would without spares. */
function familiesOf(material: Material): readonly FamilyMaterial[] {
  return material.families.map(({ family, cost }) => {
    const lines = material.lines.filter((line) => familyOf(line) === family);
    const counted = cents(lines.reduce((sum, line) => sum + costWithoutSpares(line), 0));
    return { family, counted, spares: cents(cost - counted), leftOver: cents(0) };
  });
}

function costWithoutSpares({
  line,
  item,
  unitsEach,
  cost,
  toOrder,
  isOrdered,
}: MaterialLine): Cents {
  if (isOrdered === true && cost !== null && toOrder > 0) {
    return cents(Math.round((cost * line.quantity) / toOrder));
  }
  const unitCost = item?.unitCost ?? null;
  if (cost === null || unitsEach === null || unitCost === null) return cents(0);
  const units = Number((line.quantity * unitsEach).toFixed(4));
  return canExtend(units, unitCost) ? extend(units, unitCost) : cents(0);
}

const typedCost = (name: string, amount: Cents | null, how?: string): readonly NamedCost[] =>
  amount === null || amount === 0
    ? []
    : [{ name, kind: "typed", amount, ...(how === undefined ? {} : { how }) }];

function percentOn<Group extends string>(
  read: RateReader,
  key: "overhead" | "contingency" | "taxPaid",
  ofKey: "overheadOf" | "contingencyOf" | "taxPaidOf",
  groups: readonly Group[],
) {
  const percent = read.percent(key);
  return percent === null ? null : { percent, of: read.groups(ofKey, groups) };
}

function salesTax(read: RateReader): RollUpInput["salesTax"] {
  const charged = read.percent("taxCharged");
  const taxable = read.percent("taxable");
  return {
    paid: percentOn(read, "taxPaid", "taxPaidOf", directGroups),
    charged: charged === null || taxable === null ? null : { percent: charged, taxable },
  };
}

function bondOf(
  read: RateReader,
  job: string,
): { readonly bond: RollUpInput["bond"]; readonly findings: readonly Finding[] } {
  const { value, place } = read.cell("bond");
  if (isBlank(value)) return { bond: null, findings: [] };
  const typed = typeof value === "string" || typeof value === "number" ? value : cellText(value);
  const { percent, findings } = readPricePercent({ kind: "bond", typed, place, job }, null);
  return { bond: percent === null ? null : { on: "price", percent }, findings };
}

function priceRule(
  read: RateReader,
  job: string,
): { readonly price: PriceRule; readonly findings: readonly Finding[] } {
  const method = read.choice("method", priceMethods);
  const { value, place } = read.cell("methodValue");
  if (method === "typed") {
    const price = read.money("methodValue");
    return { price: price === null ? atCost : { method, price }, findings: [] };
  }
  const typed = typeof value === "string" || typeof value === "number" ? value : "";
  const target = read.percent("target");
  const { percent, findings } = readPricePercent({ kind: method, typed, place, job }, target);
  return { price: percent === null ? atCost : { method, percent }, findings };
}
