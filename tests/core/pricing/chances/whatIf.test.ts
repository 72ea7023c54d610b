import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import { cents } from "../../../../src/core/base/units";
import { priceAlternates, withAddition } from "../../../../src/core/pricing/alternates/alternates";
import {
  costAt,
  costByPrice,
  discountThatKeeps,
  keepsTarget,
  priceThatKeeps,
} from "../../../../src/core/pricing/keepTarget";
import { noPercent, percent } from "../../../../src/core/pricing/rates/percent";
import { rollUp } from "../../../../src/core/pricing/rollup/rollUp";
import { evenSwings, swingEffects } from "../../../../src/core/pricing/chances/swings";
import {
  answerWhatIf,
  asEstimated,
  factorName,
  factorsOf,
  rollUpIf,
  type WhatIf,
} from "../../../../src/core/pricing/chances/whatIf";
import { anyJob, anyShare, plainJob } from "../jobs";

const base = rollUp(plainJob);
const target = percent(250_000);
const ifSo = (changes: Partial<WhatIf>) => rollUpIf(plainJob, base, { ...asEstimated, ...changes });
const tenth = percent(100_000);

describe("a what-if", () => {
  test("without changes is the job as estimated", () => {
    const same = ifSo({});
    expect([same.cost, same.price, same.profit]).toEqual([base.cost, base.price, base.profit]);
    fc.assert(
      fc.property(anyJob, (job) => {
        const rolled = rollUp(job);
        const again = rollUpIf(job, rolled, asEstimated);
        expect([again.cost, again.price]).toEqual([rolled.cost, rolled.price]);
      }),
    );
  });

  test("moves one material family and what comes on it", () => {
    const changed = ifSo({ material: new Map([["Track", tenth]]) });
    // 10 % of 3,100.50, with 10 % overhead, 3 % contingency on that overhead, and 8.25 % tax.
    const more = 31_005 + 3_101 + 93 + 2_558;
    expect(Math.abs(changed.cost - base.cost - more)).toBeLessThanOrEqual(2);
    expect(changed.price).toBe(base.price);
  });

  test("moves hours, wages per hour, and freight", () => {
    const labour = 108_375 + 34_680 + 79_050 + 25_296;
    const onLabour = labour * 0.1 * (1 + 0.1 + 0.03 + 0.03 * 0.1);
    for (const changes of [{ hours: tenth }, { rate: tenth }]) {
      expect(Math.abs(ifSo(changes).cost - base.cost - onLabour)).toBeLessThanOrEqual(3);
    }
    const onFreight = 4_800 * (1 + 0.1 + 0.03 * 0.1);
    expect(Math.abs(ifSo({ freight: tenth }).cost - base.cost - onFreight)).toBeLessThanOrEqual(2);
  });

  test("takes a discount off the price, and a win price instead of it", () => {
    expect(ifSo({ discount: percent(50_000) }).price).toBe(base.price - 53_650);
    expect(ifSo({ winPrice: cents(1_000_000) }).price).toBe(1_000_000);
    expect(ifSo({ winPrice: cents(1_000_000), discount: tenth }).price).toBe(900_000);
    expect(ifSo({ discount: tenth }).cost).toBe(base.cost);
  });

  test("holds the price as bid, or lets it follow the cost", () => {
    const held = ifSo({ hours: tenth });
    const follows = ifSo({ hours: tenth, price: "follows" });
    expect(held.margin).toBeLessThan(base.margin ?? 0);
    expect(follows.price).toBeGreaterThan(base.price);
    expect(follows.margin).toBeGreaterThanOrEqual(0.25);
  });

  test("answers with the differences, and with what keeps the target", () => {
    const answer = answerWhatIf(plainJob, base, { ...asEstimated, hours: tenth }, target);
    expect(answer.addsProfit + answer.addsCost).toBe(0);
    expect(answer.addsPrice).toBe(0);
    expect(answer.priceThatKeeps).toBe(Math.ceil(answer.rollUp.cost / 0.75));
    expect(answer.discountThatKeeps.amount).toBe(base.price - answer.priceThatKeeps);
    expect(answer.breakEvenPrice).toBe(answer.rollUp.cost);
  });

  test("more hours at a held price never raise the margin", () => {
    fc.assert(
      fc.property(anyJob, fc.integer({ min: 0, max: 500_000 }), (job, more) => {
        const rolled = rollUp(job);
        const longer = rollUpIf(job, rolled, { ...asEstimated, hours: percent(more) });
        expect(longer.margin ?? 0).toBeLessThanOrEqual(rolled.margin ?? 0);
      }),
      { numRuns: 200 },
    );
  });
});

describe("the price that keeps a target, and the discount that loses it", () => {
  test("are exact: a cent less loses the target, at any cost, bond and target", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1_000_000_000 }).map(cents),
        fc.integer({ min: 0, max: 90_000 }).map(percent),
        fc.integer({ min: 0, max: 900_000 }).map(percent),
        (fixed, bondOnPrice, wanted) => {
          const cost = { fixed, bondOnPrice };
          const least = priceThatKeeps(cost, wanted);
          expect(keepsTarget(cost, least, wanted)).toBe(true);
          expect(keepsTarget(cost, cents(least + 1), wanted)).toBe(true);
          expect(keepsTarget(cost, cents(least - 1), wanted)).toBe(false);
        },
      ),
    );
  });

  test("are each other's inverse", () => {
    fc.assert(
      fc.property(anyJob, anyShare, (job, wanted) => {
        const rolled = rollUp(job);
        const cost = costByPrice(rolled);
        expect(costAt(cost, rolled.price)).toBe(rolled.cost);
        const discount = discountThatKeeps(cost, rolled.price, wanted);
        expect(discount.price).toBe(priceThatKeeps(cost, wanted));
        expect(rolled.price - discount.amount).toBe(discount.price);
        if (discount.percent !== null) {
          // Rounded down, so that the percentage never gives away more than the amount.
          expect(BigInt(discount.percent) * BigInt(rolled.price)).toBeLessThanOrEqual(
            BigInt(discount.amount) * 1_000_000n,
          );
        }
      }),
      { numRuns: 300 },
    );
  });

  test("below the target the discount is below zero, and is rounded away from keeping it", () => {
    const cost = { fixed: cents(9_000), bondOnPrice: noPercent };
    expect(discountThatKeeps(cost, cents(10_000), percent(250_000))).toEqual({
      price: 12_000,
      amount: -2_000,
      percent: -200_000,
    });
    expect(discountThatKeeps(cost, cents(9_999), percent(250_000)).percent).toBe(-200_121);
  });

  test("a job that costs nothing keeps any target at any price", () => {
    const nothing = { fixed: cents(0), bondOnPrice: percent(10_000) };
    expect(priceThatKeeps(nothing, target)).toBe(0);
    expect(discountThatKeeps(nothing, cents(0), target).percent).toBeNull();
  });
});

describe("what moves the margin most", () => {
  const effects = swingEffects(plainJob, base, evenSwings(plainJob, tenth));

  test("knows every factor of the job", () => {
    expect(factorsOf(plainJob).map(factorName)).toEqual([
      "material: Fasteners",
      "material: Track",
      "hours",
      "rate",
      "freight",
      "discount",
    ]);
  });

  test("puts the widest swing first", () => {
    expect(effects.map(({ name }) => name)).toEqual([
      "discount",
      "material: Track",
      "hours",
      "rate",
      "freight",
      "material: Fasteners",
    ]);
    const swings = effects.map(({ swing }) => swing);
    expect(swings).toEqual(swings.toSorted((a, b) => b - a));
  });

  test("lets a lower cost raise the margin and a higher one lower it", () => {
    for (const { marginAtLow, marginAtHigh } of effects) {
      expect(marginAtHigh).toBeLessThan(base.margin ?? 0);
      expect(marginAtLow).toBeGreaterThanOrEqual(base.margin ?? 1);
    }
  });
});

describe("alternates and options", () => {
  const closers = withAddition(plainJob, {
    material: [{ family: "Closers", counted: cents(90_000), spares: cents(0), leftOver: cents(0) }],
    labour: plainJob.labour.map((role) => ({ ...role, hundredths: 200 })),
    equipment: [],
    subcontract: [],
    allowance: [],
  });
  const [closer, same] = priceAlternates(base, plainJob, [
    { name: "With closers", kind: "option", input: closers, how: "" },
    { name: "As it is", kind: "alternate", input: plainJob, how: "" },
  ]);

  test("are priced by their own roll-up, beside the base", () => {
    expect(closer).toMatchObject({ name: "With closers", kind: "option" });
    expect(closer?.addsCost).toBe((closer?.rollUp.cost ?? 0) - base.cost);
    expect(closer?.addsPrice).toBe((closer?.rollUp.price ?? 0) - base.price);
    expect(closer?.addsPrice).toBeGreaterThan(closer?.addsCost ?? Infinity);
  });

  test("add nothing where nothing differs", () => {
    expect(same).toMatchObject({ addsCost: 0, addsPrice: 0 });
  });
});
