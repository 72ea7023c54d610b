import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import { starterKitBook } from "../../../src/core/kitbook/starter/starterKitBook";
import { starterItems } from "../../../src/core/kitbook/starter/items";
import { marginTable } from "../../../src/core/pricing/marginTable";
import { percent } from "../../../src/core/pricing/rates/percent";
import { amountOf } from "../../../src/core/pricing/rollup/rollUp";
import type { CellValue } from "../../../src/core/base/cell";
import { rateRows, type RateKey } from "../../../src/core/pricing/rates/rateRows";
import { priceJob } from "../../../src/core/pricing/priceJob";
import { dollars, estimateOf, pricesOf, ratesOf, type OpeningWords } from "./pricedJobs";

type Rates = Readonly<Partial<Record<RateKey, CellValue>>>;
const door: OpeningWords = { mark: "D1" };

function priced(usual: Rates = {}, openings: readonly OpeningWords[] = [door], north: Rates = {}) {
  const [price] = pricesOf(estimateOf(openings), ratesOf(usual, north));
  if (price === undefined) throw new Error("No job was priced");
  return price;
}
const codes = (usual: Rates): readonly string[] => priced(usual).findings.map(({ code }) => code);

describe("a job's price from its count", () => {
  test("has the material that the count costs, spares on a line of their own", () => {
    const { input } = priced();
    const [job] = estimateOf([door]).jobs;
    const all = input.material.reduce((sum, { counted, spares }) => sum + counted + spares, 0);
    expect(all).toBe(job?.material.total);
    expect(input.material.reduce((sum, { spares }) => sum + spares, 0)).toBeGreaterThan(0);
    expect(input.material.every(({ counted, spares }) => counted >= 0 && spares >= 0)).toBe(true);
  });

  test("leaves spares to stock where the firm says so", () => {
    const [job, stock] = [priced(), priced({ sparesPaidBy: "stock" })];
    const spares = job.input.material.reduce((sum, family) => sum + family.spares, 0);
    expect(job.rollUp.directCost - stock.rollUp.directCost).toBe(spares);
  });

  test("adds the minutes of an opening for each of those alike", () => {
    const two = [{ ...door, quantity: 2 }];
    const [short, long] = [
      priced({ unpackMinutes: 0 }, two).hours,
      priced({ unpackMinutes: 6 }, two).hours,
    ];
    expect(long.hundredths - short.hundredths).toBe(20);
  });

  test.each([
    ["a blank field", "2 * tail_run", /JAMB\) are no time for D1 \(2 \* tail_run: .*blank/],
    ["less than nothing", "-12", /are no time for D1 \(-12: -12\)/],
    ["no number", `"long"`, /are no time for D1 \("long": "long"\)/],
  ])("is a least where the minutes of a row are of %s, and says so", (_, typed, says) => {
    const parts = starterKitBook.parts.map((part) =>
      part.type.value === "Sliding door" && part.item.value === "JAMB"
        ? { ...part, minutes: { value: typed, place: null } }
        : part,
    );
    const book = { ...starterKitBook, parts };
    const openings = [door, { mark: "D2" }];
    const [price] = pricesOf(estimateOf(openings, starterItems, book), ratesOf({}));
    expect(price?.rollUp.notPriced).toEqual(["hours of JAMB"]);
    const told = price?.findings.filter(({ code }) => code === "minutes-not-known");
    expect(told).toMatchObject([{ level: "warn", job: "North" }]);
    expect(told?.[0]?.message).toMatch(says);
    expect(price?.hours.hundredths).toBeLessThan(priced({}, openings).hours.hundredths);
  });

  test("takes the kit book's minutes for its rows, by bag", () => {
    const none = { unpackMinutes: 0, adjustMinutes: 0, travelMinutes: 0 };
    const { hours } = priced({ ...none, setUpMinutes: 0, cleanUpMinutes: 0 });
    const bags = Object.fromEntries(hours.bags.map(({ bag, minutes }) => [bag, minutes]));
    // The jamb takes 12 minutes in the starter's book and the strike 6.
    expect(bags["Latch side"]).toBe(18);
    expect(hours.bags.reduce((sum, { minutes }) => sum + minutes, 0)).toBeCloseTo(hours.minutes, 9);
  });

  test("makes work above 8 ft longer by the post, and 8 ft itself is not above", () => {
    const of = (postHeight: string) =>
      priced({ above8: 2, above10: 2 }, [{ ...door, postHeight }]).hours.bags.find(
        ({ bag }) => bag === "Latch side",
      )?.minutes;
    expect([of("8'"), of("9'"), of("10'")]).toEqual([18, 36, 36]);
  });

  test("learns over alike openings only where the firm says how much", () => {
    const four = [{ ...door, quantity: 4 }];
    const latch = (rates: Rates) =>
      priced(rates, four).hours.bags.find(({ bag }) => bag === "Latch side")?.minutes;
    // Four alike at 90 %: 1 + 0.9 + 0.8462 + 0.81 times the first.
    expect(latch({ learning: "90 %" })).toBeCloseTo(18 * 3.5562, 2);
    expect(latch({})).toBe(72);
  });

  test("shares the hours over the crew and prices each role by its own wage and burden", () => {
    const { rollUp, hours } = priced({
      leadPeople: 1,
      installerPeople: 3,
      leadRate: 40,
      installerRate: 20,
      burden: "50 %",
    });
    const [lead, installer] = hours.roles.map(({ hundredths }) => hundredths);
    expect((lead ?? 0) + (installer ?? 0)).toBe(hours.hundredths);
    expect(Math.abs((installer ?? 0) - 3 * (lead ?? 0))).toBeLessThanOrEqual(3);
    expect(amountOf(rollUp.lines, "labour 1")).toBe((lead ?? 0) * 40);
    expect(amountOf(rollUp.lines, "labour 2")).toBe((installer ?? 0) * 20);
    expect(amountOf(rollUp.lines, "burden 1")).toBe((lead ?? 0) * 20);
  });

  test("a crew of nobody is one lead installer, so that hours are never given away", () => {
    const { hours } = priced({ leadPeople: 0, installerPeople: 0 });
    expect(hours.roles).toEqual([{ role: "lead installer", hundredths: hours.hundredths }]);
  });

  test("ships what the material weighs, on pallets, and bills it by the firm's breaks", () => {
    const [job] = estimateOf([door]).jobs;
    const { shipment, freight } = priced({ palletCarries: 100_000, palletWeight: 50 });
    expect(shipment.weight).toBeCloseTo((job?.material.weight ?? 0) + 50, 9);
    expect(freight?.billed).toBeGreaterThanOrEqual(shipment.weight);
  });

  test("does not give freight away where no rates are set: it is named as not priced", () => {
    const blank = { freight0: null, freight500: null, freight1000: null, freight2000: null };
    const { freight, rollUp } = priced({ ...blank, freight5000: null });
    expect([freight, rollUp.notPriced]).toEqual([null, ["Freight"]]);
  });

  test("reaches the target margin, or a little more by rounding up", () => {
    const { rollUp } = priced({ method: "margin", methodValue: "30 %", roundTo: 10 });
    expect(rollUp.margin).toBeGreaterThanOrEqual(0.3);
    expect(rollUp.price % 1000).toBe(0);
    expect(rollUp.cost / 0.7).toBeGreaterThan(rollUp.price - 1000);
  });

  test("names freight and says what it weighs in words of its own, in the job's currency", () => {
    const [euros] = [{ ...dollars, code: "EUR", sign: "€", decimalMark: "," as const }];
    const [job] = estimateOf([door]).jobs;
    if (job === undefined) throw new Error("No job was counted");
    const { freight, rollUp } = priceJob({ ...job, uncounted: [] }, ratesOf({}), euros);
    expect(freight?.because).toMatch(/^\d+ lb at €46,00 per hundredweight/);
    const line = rollUp.lines.find(({ key }) => key === "freight 1");
    expect([line?.label, line?.words]).toEqual(["Freight", expect.stringMatching(/\d+ lb$/)]);
  });

  test("a least charge says that it is one", () => {
    const { rollUp } = priced({ freightLeast: 900 });
    const line = rollUp.lines.find(({ key }) => key === "freight 1");
    expect([line?.amount, line?.words]).toEqual([
      90_000,
      expect.stringMatching(/^the least charge/),
    ]);
  });

  test("pays sales tax on what the firm says", () => {
    const tax = (rates: Rates) =>
      amountOf(priced({ taxPaid: "10 %", ...rates }).rollUp.lines, "tax");
    const both = tax({ equipment: 500, taxPaidOf: "material, equipment" });
    expect(both - tax({ equipment: 500 })).toBe(5000);
  });

  test("may have a typed price", () => {
    const { rollUp } = priced({ method: "typed", methodValue: "4,321.50", roundTo: 0 });
    expect(rollUp.price).toBe(432_150);
  });

  test("follows the job's own column, and another job does not", () => {
    const two = [door, { ...door, job: "South" }];
    const [north, south] = pricesOf(estimateOf(two), ratesOf({ target: "20 %" }, { target: 0.4 }));
    expect([north?.target, south?.target]).toEqual([percent(400_000), percent(200_000)]);
  });
});

describe("what is missing or wrong is said and never free", () => {
  test("an item without a cost, and an opening that was not counted", () => {
    const items = starterItems.filter(({ code }) => code.value !== "JAMB");
    const [price] = pricesOf(estimateOf([door, { mark: "D2", width: "wide" }], items), ratesOf({}));
    expect(price?.rollUp.notPriced).toEqual(["JAMB", "opening D2", "freight of JAMB"]);
    expect([price?.unpricedLines, (price?.lines ?? 0) > 10]).toEqual([1, true]);
  });

  test("a job of nothing but rows that cannot be read has a price of nothing that is marked so", () => {
    const { rollUp, hours } = priced({}, [{ mark: "D2", width: "wide" }]);
    expect([rollUp.notPriced, hours.hundredths]).toEqual([["opening D2"], 0]);
  });

  test("starter rates are named as invented, and the firm's own are not", () => {
    const message = priced({ leadRate: 50 })
      .findings.map((finding) => finding.message)
      .join("\n");
    expect(message).toContain("Installer, wage");
    expect(message).not.toContain("Lead installer, wage");
  });

  test.each<readonly [string, Rates, string]>([
    ["a wage that is no price", { leadRate: "much" }, "price-not-understood"],
    ["a percentage that is none", { overhead: "some" }, "rate-not-a-percentage"],
    ["a margin of 100 % and more", { methodValue: "120 %" }, "margin-out-of-range"],
    ["a bond that is none", { bond: "yes" }, "percent-not-a-number"],
  ])("%s is a stop", (_what, rates, code) => {
    expect(codes(rates)).toContain(code);
    expect(priced(rates).findings.find((finding) => finding.code === code)?.level).toBe("stop");
  });

  test.each<readonly [string, Rates, string]>([
    ["contingency", { contingency: 1.5 }, "Contingency is 1.5, which is read as 150 %."],
    ["contingency of a half", { contingency: 0.5 }, "read as 50 %"],
    ["overhead", { overhead: 1 }, "Overhead is 1, which is read as 100 %."],
    ["burden", { burden: 1.25 }, "read as 125 %"],
    ["tax that we pay", { taxPaid: 1 }, "read as 100 %"],
    ["tax that we charge", { taxCharged: 1 }, "read as 100 %"],
    ["markup", { method: "markup", methodValue: 1.5 }, "The markup 1.5 is read as 150 %."],
  ])("a bare number for the %s that is a lot of percent is doubted once", (_what, rates, says) => {
    const doubts = priced(rates).findings.filter(({ message }) => message.includes("read as"));
    expect(doubts.map(({ message }) => message)).toEqual([expect.stringContaining(says)]);
    expect(doubts[0]?.place?.sheet).toBe("Rates");
  });

  test.each<readonly [string, Rates]>([
    ["all that is usual", { contingency: 0.05, overhead: "35 %", burden: 0.42, taxCharged: 0.07 }],
    ["a whole that is meant", { taxable: 1, method: "markup", methodValue: 0.4 }],
  ])("%s is not doubted", (_what, rates) => {
    expect(priced(rates).findings.filter(({ message }) => message.includes("read as"))).toEqual([]);
  });

  test("a markup that is the same number as the target margin is doubted", () => {
    expect(codes({ method: "markup", methodValue: "24 %", target: "24 %" })).toContain(
      "markup-is-the-target-margin",
    );
  });

  test("a price that could not be read is the cost, without a profit that nobody asked for", () => {
    const { rollUp } = priced({ method: "typed", methodValue: "cheap", roundTo: 0 });
    expect(rollUp.profit).toBe(0);
  });
});

test("whatever is typed on a rates sheet gives a price or says why not, and never breaks", () => {
  const result = estimateOf([door, { mark: "D2", quantity: 3, type: "hinged door", width: "3'" }]);
  const content: readonly CellValue[] = [
    null,
    "",
    " ",
    "x",
    true,
    0,
    0.5,
    -0.5,
    1,
    -1,
    7.25,
    1e7,
    1e15,
    1e300,
    "0 %",
    "50 %",
    "-50 %",
    "100 %",
    "150 %",
    "9 %",
    "90 %",
    "1,000,000.55",
    "material",
    "typed",
    "markup",
    "nearest",
    "stock",
    { kind: "error", error: "#REF!" },
    { kind: "date", serial: 46_000 },
  ];
  const keys = rateRows.map(({ key }) => key);
  const anyRates = fc.dictionary(fc.constantFrom(...keys), fc.constantFrom(...content), {
    maxKeys: keys.length,
  });
  fc.assert(
    fc.property(anyRates, (rates) => {
      for (const { rollUp } of pricesOf(result, ratesOf(rates))) {
        expect(Number.isSafeInteger(rollUp.price)).toBe(true);
        expect(rollUp.cost + rollUp.profit).toBe(rollUp.price);
      }
      marginTable(pricesOf(result, ratesOf(rates)));
    }),
    { numRuns: 400 },
  );
});
