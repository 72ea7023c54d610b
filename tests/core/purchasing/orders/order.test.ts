import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { cents, inches, pieces } from "../../../../src/core/base/units";
import { checkCutPlan } from "../../../../src/core/purchasing/cutting/checkCutPlan";
import type { OrderInput } from "../../../../src/core/purchasing/orders/orderInput";
import { planOrder } from "../../../../src/core/purchasing/orders/order";
import type { PlanCuts } from "../../../../src/core/purchasing/orders/orderCuts";
import { orderInTwo } from "../../../../src/core/purchasing/orders/orderInTwo";
import type { OrderLine, OrderPlan } from "../../../../src/core/purchasing/orders/orderPlan";
import type { Share } from "../../../../src/core/purchasing/orders/shares";
import { offerOf } from "../offerOf";
import { inputOf, orderOf, planCuts, showSize, today, twoJobs, type DemandWords } from "../orderOf";

const money = (cost: number): string => (cost / 100).toFixed(2);
/** `HN 1/4: 30 = 1 x 50 Alder 6.00, 20 left`. */
const words = (line: OrderLine): string => {
  const name = [line.item, ...line.size].join(" ");
  const packs = line.packs.map(
    ({ offer, count, cost }) => `${count} x ${offer.packSize} ${offer.supplier} ${money(cost)}`,
  );
  return `${line.kind} ${name}: ${line.buy} = ${packs.join(" + ") || "none"}, ${line.leftOver} left`;
};
const sharesIn = (shares: readonly Share[]): readonly string[] =>
  shares.map(({ job, cost }) => `${job ?? "stock"} ${money(cost)}`);
const codes = (plan: OrderPlan): readonly string[] => plan.findings.map(({ code }) => code);
const costOf = (shares: readonly Share[]): number =>
  shares.reduce((sum, { cost }) => sum + cost, 0);

const nuts = offerOf({ item: "HN 1/4", pack: 50, price: 600 });
const bars = offerOf({ item: "TRACK", size: [240], price: 5000 });

describe("one order for two jobs", () => {
  const input = inputOf({
    demands: twoJobs,
    offers: [nuts, bars],
    needBy: { Mill: 28, Depot: 14 },
  });
  const plan = orderOf(input);

  test("rounds packs once and cuts both jobs' pieces from one bar", () => {
    expect(plan.lines.map(words)).toEqual([
      "loose HN 1/4: 35 = 1 x 50 Alder 6.00, 15 left",
      "cut TRACK 96: 1 = none, 0 left",
      "cut TRACK 120: 1 = none, 0 left",
      "bar TRACK 240: 1 = 1 x 1 Alder 50.00, 0 left",
    ]);
    expect(plan).toMatchObject({ complete: true, total: 5600, findings: [] });
  });

  test("shares each pack over the jobs and stock: nuts by the piece, the bar by length", () => {
    // 35 of 50 nuts are the jobs'; of the bar's 240 in the 24 left over are an offcut worth keeping.
    expect(plan.lines.map((line) => sharesIn(line.shares))).toEqual([
      ["Depot 1.80", "Mill 2.40", "stock 1.80"],
      [],
      [],
      ["Depot 25.00", "Mill 20.00", "stock 5.00"],
    ]);
    expect(sharesIn(plan.shares)).toEqual(["Depot 26.80", "Mill 22.40", "stock 6.80"]);
  });

  test("leaves nuts and an offcut for stock", () => {
    expect(plan.leftOver).toEqual([
      { item: "HN 1/4", size: [], pieces: 15 },
      { item: "TRACK", size: [24], pieces: 1 },
    ]);
  });

  test("says what it saves against ordering job by job", () => {
    expect(plan.saved).toEqual({ money: 5600, pieces: 51, packs: 2 });
  });

  test("is due when the earlier job needs it", () => {
    expect(plan.lines.map(({ needBy }) => needBy)).toEqual([
      today + 14,
      today + 28,
      today + 14,
      today + 14,
    ]);
  });
});

describe("an order", () => {
  test("takes the shelf off first and buys nothing that is there", () => {
    const plan = orderOf(
      inputOf({
        demands: [
          ["Mill", "101", "HN 1/4", 20],
          ["Mill", "101", "TRACK", 2, 96],
        ],
        offers: [nuts, bars],
        standing: {
          onHand: [
            { item: "hn 1/4", size: [], pieces: pieces(30) },
            { item: "Track", size: [inches(100)], pieces: pieces(2) },
          ],
        },
      }),
    );
    expect(plan.total).toBe(0);
    expect(plan.lines.map(words)).toEqual([
      "loose HN 1/4: 0 = none, 0 left",
      "cut TRACK 96: 2 = none, 0 left",
    ]);
    expect(plan.cutPlans[0]).toMatchObject({ cost: 0, proven: true });
  });

  test("uses no bar on hand twice where it is wanted whole and to cut from", () => {
    const input = inputOf({
      demands: [["Mill", "101", "TRACK", 1, 96]],
      offers: [bars],
      standing: { onHand: [{ item: "TRACK", size: [inches(240)], pieces: pieces(1) }] },
    });
    const whole = { job: "Mill", mark: "102", item: "TRACK", size: [inches(240)] };
    const both = { ...whole, quantity: pieces(1), isCut: false };
    const plan = orderOf({ ...input, demands: [...input.demands, both] });
    expect(plan.total).toBe(5000);
  });

  test("adds freight and least orders, shared as the goods are", () => {
    const plan = orderOf(
      inputOf({
        demands: [
          ["Mill", "101", "HN 1/4", 30],
          ["Depot", "7", "HN 1/4", 20],
        ],
        offers: [nuts],
        terms: [{ supplier: "Alder", leastOrder: cents(1000), freight: cents(301) }],
      }),
    );
    expect(plan.charges).toEqual([
      {
        supplier: "Alder",
        goods: 600,
        madeUp: 400,
        freight: 301,
        shares: [
          { job: "Depot", cost: 280 },
          { job: "Mill", cost: 421 },
        ],
      },
    ]);
    expect(plan.total).toBe(1301);
  });

  test("says what the split between suppliers saves", () => {
    const plan = orderOf(
      inputOf({
        demands: [
          ["Mill", "101", "HN 1/4", 50],
          ["Mill", "101", "FW 1/4", 50],
        ],
        offers: [
          nuts,
          offerOf({ item: "FW 1/4", pack: 50, price: 900 }),
          offerOf({ item: "HN 1/4", supplier: "Birch", pack: 50, price: 700 }),
          offerOf({ item: "FW 1/4", supplier: "Birch", pack: 50, price: 500 }),
        ],
      }),
    );
    expect(plan.total).toBe(1100);
    expect(plan.suppliers).toMatchObject({
      againstOne: { supplier: "Birch", saves: 100 },
      againstPriceAlone: 0,
      proven: true,
    });
  });

  test("buys bars in the packs they are sold in, and keeps the bars too many", () => {
    const plan = orderOf(
      inputOf({
        demands: [["Mill", "101", "TRACK", 3, 200]],
        offers: [offerOf({ item: "TRACK", size: [240], pack: 5, price: 20_000 })],
      }),
    );
    expect(plan.lines.map(words)).toContain("bar TRACK 240: 3 = 1 x 5 Alder 200.00, 2 left");
    expect(plan.leftOver).toEqual([
      { item: "TRACK", size: [40], pieces: 3 },
      { item: "TRACK", size: [240], pieces: 2 },
    ]);
  });

  test("of nothing is empty and complete", () => {
    expect(orderOf(inputOf({ demands: [], offers: [nuts] }))).toMatchObject({
      complete: true,
      lines: [],
      total: 0,
      saved: null,
    });
  });

  test("passes over the demands of jobs that were not chosen", () => {
    const input = inputOf({
      demands: [
        ["Mill", "101", "HN 1/4", 20],
        ["Depot", "7", "HN 1/4", 15],
      ],
      offers: [nuts],
    });
    const only = { ...input, jobs: input.jobs.filter(({ job }) => job === "Depot") };
    expect(orderOf(only).lines[0]?.buy).toBe(15);
  });
});

describe("what is not on the order", () => {
  test("is a stop where nobody sells it", () => {
    const plan = orderOf(inputOf({ demands: [["Mill", "101", "FA 1/4", 4]], offers: [nuts] }));
    expect(plan.complete).toBe(false);
    expect(plan.findings[0]).toMatchObject({
      code: "nobody-sells",
      level: "stop",
      found: "4 of FA 1/4",
    });
  });

  test("is one finding for all that nobody sells, with every name", () => {
    const demands: readonly DemandWords[] = [
      ["Mill", "101", "FA 1/4", 4],
      ["Mill", "101", "HN 1/4", 20],
      ["Mill", "101", "TRACK", 1, 96],
      ["Depot", "7", "TRACK", 2, 96],
      ["Depot", "7", "TRACK", 1, 120],
    ];
    const plan = orderOf(inputOf({ demands, offers: [] }));
    expect(plan.findings.filter(({ level }) => level === "stop")).toMatchObject([
      {
        code: "nobody-sells",
        message: expect.stringContaining("not ordered (4)"),
        found: "4 of FA 1/4; 20 of HN 1/4; 1 of TRACK 120; 3 of TRACK 96",
      },
    ]);
  });

  test("is one finding for all that no bar is long enough for", () => {
    const demands: readonly DemandWords[] = [
      ["Mill", "101", "TRACK", 1, 250],
      ["Mill", "102", "TRACK", 2, 260],
      ["Mill", "102", "TRACK", 1, 96],
    ];
    const stops = orderOf(inputOf({ demands, offers: [bars] })).findings.filter(
      ({ level }) => level === "stop",
    );
    expect(stops).toMatchObject([{ job: "Mill", message: expect.stringContaining("(2)") }]);
    expect(stops[0]?.found.split("; ").sort()).toEqual([
      "1 of TRACK 250 for 101 of Mill",
      "2 of TRACK 260 for 102 of Mill",
    ]);
    expect(stops[0]).not.toHaveProperty("mark");
  });

  test("is a stop with job and mark where no bar is long enough", () => {
    const plan = orderOf(
      inputOf({
        demands: [
          ["Mill", "101", "TRACK", 1, 250],
          ["Mill", "102", "TRACK", 1, 96],
        ],
        offers: [bars],
      }),
    );
    expect(plan.complete).toBe(false);
    expect(plan.findings[0]).toMatchObject({
      code: "no-bar-long-enough",
      job: "Mill",
      mark: "101",
      found: "1 of TRACK 250 for 101 of Mill",
    });
    expect(plan.total).toBe(5000);
  });
});

describe("in time", () => {
  const demands: readonly DemandWords[] = [["Mill", "101", "HN 1/4", 20]];
  const slow = offerOf({ item: "HN 1/4", pack: 50, price: 500, lead: 15 });
  const quick = offerOf({ item: "HN 1/4", supplier: "Birch", pack: 50, price: 800, lead: 2 });

  test("a cheaper offer that comes too late is left out, and that is said", () => {
    const plan = orderOf(inputOf({ demands, offers: [slow, quick], needBy: { Mill: 7 } }));
    expect(plan.lines[0]?.packs[0]?.offer.supplier).toBe("Birch");
    expect(codes(plan)).toEqual(["offer-too-late"]);
  });

  test("it is taken where the firm says so, and is then late", () => {
    const plan = orderOf(
      inputOf({ demands, offers: [slow, quick], needBy: { Mill: 7 }, leaveOutLate: false }),
    );
    expect(plan.lines[0]?.packs[0]?.offer.supplier).toBe("Alder");
    expect(codes(plan)).toEqual(["order-late"]);
    // Due 15 working days before Monday 14 September: 10 of them before today.
    expect(plan.lines[0]?.deadline?.lateDays).toBe(10);
  });

  test("what nobody can bring in time is ordered all the same, and is late", () => {
    const plan = orderOf(inputOf({ demands, offers: [slow], needBy: { Mill: 7 } }));
    expect(plan.lines[0]?.packs).toHaveLength(1);
    expect(codes(plan)).toEqual(["order-late"]);
  });

  test("a job without a date is noted", () => {
    expect(codes(orderOf(inputOf({ demands, offers: [nuts] })))).toEqual(["job-without-date"]);
  });

  test("on request it is split into now and can wait", () => {
    const input = inputOf({
      demands: [
        ["Mill", "101", "HN 1/4", 20],
        ["Depot", "7", "HN 1/4", 20],
        ["Depot", "7", "TRACK", 1, 96],
      ],
      offers: [offerOf({ item: "HN 1/4", pack: 50, price: 600, lead: 3 }), bars],
      terms: [{ supplier: "Alder", leastOrder: cents(0), freight: cents(250) }],
      needBy: { Mill: 7, Depot: 60 },
    });
    const { now, canWait, costsMore } = orderInTwo(
      input,
      orderOf(input),
      today + 7,
      planCuts,
      showSize,
    );
    expect(now.lines.map(words)).toEqual(["loose HN 1/4: 40 = 1 x 50 Alder 6.00, 10 left"]);
    expect(canWait.lines.map(words)).toContain("bar TRACK 240: 1 = 1 x 1 Alder 50.00, 0 left");
    expect(costsMore).toBe(250);
  });
});

describe("whatever the jobs", () => {
  const anyDemand: fc.Arbitrary<DemandWords> = fc.oneof(
    fc.tuple(
      fc.constantFrom("A", "B", "C"),
      fc.constantFrom("1", "2"),
      fc.constantFrom("HN", "FW", "none"),
      fc.integer({ min: 0, max: 40 }),
    ),
    fc.tuple(
      fc.constantFrom("A", "B", "C"),
      fc.constantFrom("1", "2"),
      fc.constant("TRACK"),
      fc.integer({ min: 0, max: 3 }),
      fc.integer({ min: 20, max: 130 }),
    ),
  );
  const anyOffer = fc.oneof(
    fc
      .record({
        item: fc.constantFrom("HN", "FW"),
        supplier: fc.constantFrom("Alder", "Birch"),
        pack: fc.integer({ min: 1, max: 30 }),
        price: fc.integer({ min: 1, max: 999 }),
        from: fc.integer({ min: 1, max: 3 }),
      })
      .map(offerOf),
    fc
      .record({
        item: fc.constant("TRACK"),
        size: fc.constantFrom([96], [120], [144]),
        supplier: fc.constantFrom("Alder", "Birch"),
        pack: fc.integer({ min: 1, max: 3 }),
        price: fc.integer({ min: 500, max: 999 }),
      })
      .map(offerOf),
  );
  const anyInput: fc.Arbitrary<OrderInput> = fc
    .record({
      demands: fc.array(anyDemand, { maxLength: 8 }),
      offers: fc.array(anyOffer, { maxLength: 6 }),
      terms: fc.constantFrom(
        [],
        [{ supplier: "Alder", leastOrder: cents(2000), freight: cents(333) }],
      ),
    })
    .map(inputOf);

  test("shares add up to every pack, line, charge and the total, to the cent", () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const plan = orderOf(input);
        for (const line of plan.lines) {
          for (const packs of line.packs) expect(costOf(packs.shares)).toBe(packs.cost);
          expect(costOf(line.shares)).toBe(line.cost);
        }
        for (const charge of plan.charges) {
          expect(costOf(charge.shares)).toBe(charge.madeUp + charge.freight);
        }
        expect(costOf(plan.shares)).toBe(plan.total);
      }),
      { numRuns: 80 },
    );
  });

  test("everything needed is bought, cut, on hand or a stop", () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const plan = orderOf(input);
        const isShort = plan.lines.some(
          (line) =>
            line.kind !== "cut" &&
            line.packs.reduce((sum, { offer, count }) => sum + count * offer.packSize, 0) <
              line.buy,
        );
        const isUncut = plan.cutPlans.some(({ unplaced }) => unplaced.length > 0);
        expect(plan.complete).toBe(!isShort && !isUncut);
      }),
      { numRuns: 80 },
    );
  });

  test("the order of jobs and demands changes nothing", () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const turned = {
          ...input,
          jobs: input.jobs.toReversed(),
          demands: input.demands.toReversed(),
        };
        expect(orderOf(turned)).toEqual(orderOf(input));
      }),
      { numRuns: 60 },
    );
  });

  test("the common order costs no more than job by job where nothing is cut", () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const loose = { ...input, demands: input.demands.filter(({ isCut }) => !isCut) };
        const { saved } = orderOf({ ...loose, terms: [] });
        expect(saved?.money ?? 0).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 60 },
    );
  });

  test("every cut plan that an order asks for, for all jobs or for one, can be cut", () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const faults: string[] = [];
        const checked: PlanCuts = (problem, purpose) => {
          const plan = planCuts(problem, purpose);
          faults.push(...checkCutPlan(problem, plan));
          return plan;
        };
        planOrder(input, checked, showSize);
        expect(faults).toEqual([]);
      }),
      { numRuns: 50 },
    );
  });
});
