import { describe, expect, test } from "@jest/globals";
import { cents } from "../../../src/core/base/units";
import { priceAlternates } from "../../../src/core/pricing/alternates/alternates";
import { percent } from "../../../src/core/pricing/rates/percent";
import {
  quotation,
  type Quotation,
  type QuotationTerms,
} from "../../../src/core/pricing/quotation";
import { rollUp } from "../../../src/core/pricing/rollup/rollUp";
import { plainJob } from "./jobs";

const terms: QuotationTerms = {
  firm: "Invented Partitions",
  customer: "Invented Warehouse",
  project: "North",
  number: "Q-0001",
  date: 46_200,
  validUntil: 46_230,
  inclusions: ["Doors, track and hardware, installed"],
  exclusions: ["Concrete cutting"],
  notes: [],
};
const scope = [
  { mark: "D1", type: "sliding door", size: "8' x 7'", hand: "left", quantity: 2 },
  { mark: "D2", type: "sliding door", size: "5' x 8'", hand: "", quantity: 1 },
];
const charged = { percent: percent(82_500), taxable: percent(1_000_000) };
const job = { ...plainJob, salesTax: { ...plainJob.salesTax, charged } };
const rolled = rollUp(job);
const alternates = priceAlternates(rolled, job, [
  {
    name: "With closers",
    kind: "option",
    how: "",
    input: { ...job, allowance: [{ name: "Closers", kind: "typed", amount: cents(123_456) }] },
  },
]);
const quoted = quotation(terms, scope, rolled, alternates);

describe("a quotation", () => {
  test("shows scope, terms, price, tax and what alternates add", () => {
    expect(quoted).toEqual({
      ...terms,
      scope,
      openings: 3,
      price: rolled.price,
      salesTax: rolled.taxCharged,
      priceWithTax: rolled.priceWithTax,
      alternates: [{ name: "With closers", kind: "option", addsPrice: alternates[0]?.addsPrice }],
      caution: expect.stringContaining("local codes"),
    });
  });

  test("shows no tax where none is charged", () => {
    const plain = quotation(terms, scope, rollUp(plainJob), []);
    expect([plain.salesTax, plain.priceWithTax]).toEqual([null, plain.price]);
  });

  test("holds no figure of the roll-up but price and tax", () => {
    const shown = new Set<number>([quoted.price, quoted.priceWithTax, rolled.taxCharged]);
    const hidden = rolled.lines.map(({ amount }) => amount).filter((amount) => !shown.has(amount));
    const text = JSON.stringify(quoted);
    expect(hidden.length).toBeGreaterThan(10);
    for (const amount of hidden.filter((one) => one > 0))
      expect(text).not.toContain(String(amount));
  });

  test("takes nothing along that was put into its scope or terms by mistake", () => {
    const leaky = { ...terms, margin: 0.25, cost: 804_280 };
    const leakyScope = scope.map((opening) => ({ ...opening, cost: 12_345, hours: 7 }));
    const text = JSON.stringify(quotation(leaky, leakyScope, rolled, alternates));
    expect(text).not.toMatch(/cost|margin|markup|hours|profit|overhead|because|words/i);
  });

  test("has no place for a cost: its keys are these and no others", () => {
    type Keys<T> = T extends string | number | null
      ? never
      : T extends readonly (infer Item)[]
        ? Keys<Item>
        : { [Key in keyof T]: Key | Keys<T[Key]> }[keyof T];
    const keys: Record<Keys<Quotation>, true> = {
      firm: true,
      customer: true,
      project: true,
      number: true,
      date: true,
      validUntil: true,
      inclusions: true,
      exclusions: true,
      notes: true,
      scope: true,
      mark: true,
      type: true,
      size: true,
      hand: true,
      quantity: true,
      openings: true,
      price: true,
      salesTax: true,
      priceWithTax: true,
      alternates: true,
      name: true,
      kind: true,
      addsPrice: true,
      caution: true,
    };
    const found = new Set<string>();
    JSON.stringify(quoted, (key: string, value: unknown) => {
      if (/[a-z]/.test(key)) found.add(key);
      return value;
    });
    expect([...found].sort()).toEqual(Object.keys(keys).sort());
  });
});
