/** Jobs to price in tests: one by hand, and any at all. */
import fc from "fast-check";
import { cents, tenThousandths } from "../../../src/core/base/units";
import { percent } from "../../../src/core/pricing/rates/percent";
import {
  directGroups,
  type NamedCost,
  type RollUpInput,
} from "../../../src/core/pricing/rollup/rollUpInput";

export const plainJob: RollUpInput = {
  job: "North",
  material: [
    { family: "Fasteners", counted: cents(41_237), spares: cents(2_310), leftOver: cents(1_999) },
    { family: "Track", counted: cents(310_050), spares: cents(0), leftOver: cents(20_000) },
  ],
  sparesPaidBy: "job",
  leftOverPaidBy: "stock",
  notPriced: [],
  freight: [{ name: "Truck", kind: "typed", amount: cents(48_000) }],
  labour: [
    { role: "lead", hundredths: 2550, rate: tenThousandths(425_000), burden: percent(320_000) },
    {
      role: "installer",
      hundredths: 2550,
      rate: tenThousandths(310_000),
      burden: percent(320_000),
    },
  ],
  equipment: [
    { name: "Lift", kind: "times", quantity: 2, unit: "days", each: tenThousandths(1_850_000) },
  ],
  subcontract: [],
  allowance: [{ name: "Touch-up", kind: "typed", amount: cents(10_000) }],
  overhead: { percent: percent(100_000), of: directGroups },
  contingency: { percent: percent(30_000), of: ["labour", "overhead"] },
  salesTax: { paid: { percent: percent(82_500), of: ["material"] }, charged: null },
  bond: null,
  price: { method: "margin", percent: percent(250_000) },
  rounding: { step: 10, way: "up" },
};

// Any job at all.
const amount = fc.integer({ min: 0, max: 9_000_000 }).map(cents);
const rate = fc.integer({ min: 0, max: 5_000_000 }).map(tenThousandths);
export const anyShare = fc.integer({ min: 0, max: 600_000 }).map(percent);
const quantity = fc.integer({ min: 0, max: 100_000 }).map((value) => value / 100);
const named: fc.Arbitrary<NamedCost> = fc.oneof(
  fc.record({ name: fc.constant("typed"), kind: fc.constant("typed" as const), amount }),
  fc.record({
    name: fc.constant("times"),
    kind: fc.constant("times" as const),
    quantity,
    unit: fc.constant("days"),
    each: rate,
  }),
);
const few = <T>(of: fc.Arbitrary<T>) => fc.array(of, { maxLength: 3 });
export const anyJob: fc.Arbitrary<RollUpInput> = fc.record({
  job: fc.constant("Any"),
  material: few(
    fc.record({ family: fc.constant("F"), counted: amount, spares: amount, leftOver: amount }),
  ),
  sparesPaidBy: fc.constantFrom("job", "stock"),
  leftOverPaidBy: fc.constantFrom("job", "stock"),
  notPriced: fc.constant([]),
  freight: few(named),
  labour: few(
    fc.record({
      role: fc.constant("R"),
      hundredths: fc.integer({ min: 0, max: 100_000 }),
      rate,
      burden: anyShare,
    }),
  ),
  equipment: few(named),
  subcontract: few(named),
  allowance: few(named),
  overhead: fc.option(fc.record({ percent: anyShare, of: fc.subarray([...directGroups]) })),
  contingency: fc.option(
    fc.record({ percent: anyShare, of: fc.subarray([...directGroups, "overhead" as const]) }),
  ),
  salesTax: fc.record({
    paid: fc.option(fc.record({ percent: anyShare, of: fc.subarray([...directGroups]) })),
    charged: fc.option(fc.record({ percent: anyShare, taxable: anyShare })),
  }),
  bond: fc.option(
    fc.oneof(
      fc.record({
        on: fc.constant("price" as const),
        percent: fc.integer({ min: 0, max: 50_000 }).map(percent),
      }),
      fc.record({
        on: fc.constant("cost" as const),
        percent: fc.integer({ min: 0, max: 50_000 }).map(percent),
        of: fc.subarray([...directGroups, "overhead" as const, "contingency" as const]),
      }),
    ),
  ),
  price: fc.oneof(
    fc.record({ method: fc.constantFrom("markup", "margin"), percent: anyShare }),
    fc.record({ method: fc.constant("typed" as const), price: amount }),
  ),
  rounding: fc.record({
    step: fc.constantFrom(0, 1, 5, 10, 50, 100),
    way: fc.constantFrom("nearest", "up"),
  }),
});
