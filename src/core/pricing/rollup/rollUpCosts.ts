/** The cost lines of a roll-up, from material to the last percentage on it. */
import { cents, type Cents } from "../../base/units";
import { sumOf } from "../../money/amounts";
import { lineOver, quantityLine, typedLine } from "./lineRules";
import { percentText } from "../rates/percent";
import {
  type DirectGroup,
  type FamilyMaterial,
  type NamedCost,
  type Payer,
  type PercentOn,
  type RollUpInput,
} from "./rollUpInput";
import type { LineGroup, LineKey, RollUpLine } from "./rollUpLine";

export const directKey: LineKey = "direct cost";

/** Every line up to the cost, which of them add up to it, and what has no amount. */
export type CostLines = {
  readonly lines: readonly RollUpLine[];
  /** Their amounts are the cost, before a bond on the price. */
  readonly parts: readonly RollUpLine[];
  readonly notPriced: readonly string[];
};

/** A line, and whether its amount is known. */
type Costed = { readonly line: RollUpLine; readonly known: boolean };

/** Numbers keys within a group from 1, so that two costs of one name stay two lines. */
const keyOf = (group: LineGroup, index: number): LineKey => `${group} ${index + 1}`;

export function costLines(input: RollUpInput): CostLines {
  const costed: readonly Costed[] = [
    ...materialLines(input),
    ...namedLines("freight", input.freight),
    ...labourLines(input),
    ...namedLines("equipment", input.equipment),
    ...namedLines("subcontract", input.subcontract),
    ...namedLines("allowance", input.allowance),
  ];
  const direct = costed.map(({ line }) => line);
  const total = lineOver(
    { key: directKey, group: "cost", label: "Direct cost", words: "all lines above" },
    "sum",
    direct,
  );
  const lines = [...direct, total];
  const parts = [total];
  const add = <Group extends LineGroup>(
    group: LineGroup,
    label: string,
    on: PercentOn<Group> | null,
  ): void => {
    if (on === null) return;
    const groups: readonly LineGroup[] = on.of;
    const line = lineOver(
      {
        key: group,
        group,
        label,
        words: `${percentText(on.percent)} of ${on.of.join(", ")}`,
        wordsByRate: `of ${on.of.join(", ")}`,
      },
      "percent",
      lines.filter((one) => groups.includes(one.group)),
      { kind: "percent", value: on.percent },
    );
    lines.push(line);
    parts.push(line);
  };
  add("overhead", "Overhead", input.overhead);
  add("contingency", "Contingency", input.contingency);
  add("tax", "Sales tax paid", input.salesTax.paid);
  add("bond", "Bond", input.bond?.on === "cost" ? input.bond : null);
  return {
    lines,
    parts,
    notPriced: [
      ...input.notPriced,
      ...costed.filter(({ known }) => !known).map(({ line }) => line.label),
    ],
  };
}

function materialLines(input: RollUpInput): readonly Costed[] {
  const families = input.material.map(({ family, counted }, index) => ({
    line: typedLine(
      { ...part("material", index, `Material: ${family}`), words: "as counted" },
      counted,
    ),
    known: true,
  }));
  const extra = (
    label: string,
    of: (family: FamilyMaterial) => Cents,
    payer: Payer,
  ): readonly Costed[] => {
    const amount = sumOf(input.material.map(of));
    if (amount === 0) return [];
    const words = payer === "job" ? "paid by the job" : "paid by stock, not by this job";
    const line = typedLine(
      { key: label.toLowerCase(), group: "material", label, words },
      payer === "job" ? amount : cents(0),
    );
    return [{ line, known: true }];
  };
  return [
    ...families,
    ...extra("Spares", ({ spares }) => spares, input.sparesPaidBy),
    ...extra("Left over in packs", ({ leftOver }) => leftOver, input.leftOverPaidBy),
  ];
}

const part = (
  group: DirectGroup,
  index: number,
  label: string,
): { key: LineKey; group: DirectGroup; label: string } => ({
  key: keyOf(group, index),
  group,
  label,
});

const notPriced = "not priced: not in the cost";

function namedLines(group: DirectGroup, costs: readonly NamedCost[]): readonly Costed[] {
  return costs.map((cost, index): Costed => {
    const shape = part(group, index, cost.name);
    if (cost.kind === "typed") {
      const { amount, how = "as typed" } = cost;
      const words = amount === null ? notPriced : how;
      return { line: typedLine({ ...shape, words }, amount ?? cents(0)), known: amount !== null };
    }
    if (cost.each === null) {
      return { line: typedLine({ ...shape, words: notPriced }, cents(0)), known: false };
    }
    const of = cost.how === undefined ? "" : `: ${cost.how}`;
    const line = quantityLine(
      { ...shape, words: `${cost.unit} x price for each${of}` },
      { kind: "quantity", value: cost.quantity, unit: cost.unit },
      { kind: "each", value: cost.each },
    );
    return { line, known: true };
  });
}

/** Two lines for each role: its wages, and the burden on them. */
function labourLines({ labour }: RollUpInput): readonly Costed[] {
  return labour.flatMap(({ role, hundredths, rate, burden }, index): readonly Costed[] => {
    const shape = part("labour", index, `Labour: ${role}`);
    if (rate === null) {
      return [
        { line: typedLine({ ...shape, words: notPriced }, cents(0)), known: hundredths === 0 },
      ];
    }
    const wages = quantityLine(
      { ...shape, words: "hours x rate" },
      { kind: "quantity", value: hundredths / 100, unit: "hours" },
      { kind: "each", value: rate },
    );
    if (burden === 0) return [{ line: wages, known: true }];
    const onTop = lineOver(
      {
        key: `burden ${index + 1}`,
        group: "labour",
        label: `Burden: ${role}`,
        words: `${percentText(burden)} of these wages`,
        wordsByRate: "of these wages",
      },
      "percent",
      [wages],
      { kind: "percent", value: burden },
    );
    return [
      { line: wages, known: true },
      { line: onTop, known: true },
    ];
  });
}
