/** What an owner asks of the prices, for a person at a terminal. */
import { placeName } from "../../core/base/cell";
import { moneyText } from "../../core/money/writeMoney";
import type { Currency } from "../../core/money/currency";
import { cents } from "../../core/base/units";
import { percentText } from "../../core/pricing/rates/percent";
import { marginAtShare } from "../../core/pricing/chances/simulation";
import type { ActualsReport } from "../../app/pricing/jobActuals";
import type { WhatIfTable } from "../../app/pricing/whatIfJobs";
import type { JobSimulation, JobSwings } from "./ownerAnswers";
import { columns, shareText } from "./priceText";
import { textTable } from "./textTable";

export function whatIfText(
  { rows }: WhatIfTable,
  swings: readonly JobSwings[],
  currency: Currency,
): readonly string[] {
  const money = (amount: Parameters<typeof moneyText>[0]): string => moneyText(amount, currency);
  return [
    ...textTable(
      columns(
        ["What if"],
        [
          "Cost",
          "Price",
          "Margin",
          "was",
          "Target",
          "Price that keeps it",
          "Discount that keeps it",
        ],
      ),
      rows.map(({ job, answer }) => [
        job.job,
        money(answer.rollUp.cost),
        money(answer.rollUp.price),
        shareText(answer.rollUp.margin),
        shareText(job.rollUp.margin),
        percentText(job.target),
        money(answer.priceThatKeeps),
        money(answer.discountThatKeeps.amount),
      ]),
    ),
    "A cent more of discount loses the target; below zero, so much must be added to the price.",
    "",
    ...swings.flatMap(({ job, swings: effects }) => [
      `${job}: what moves the margin most, each figure from the low to the high end of its range`,
      ...textTable(
        columns(["Figure"], ["Low", "Margin", "High", "Margin", "Swing"]),
        effects.map(({ name, low, high, marginAtLow, marginAtHigh, swing }) => [
          name,
          percentText(low),
          shareText(marginAtLow),
          percentText(high),
          shareText(marginAtHigh),
          shareText(swing),
        ]),
      ).map((line) => `  ${line}`),
      "",
    ]),
  ];
}

const bar = (count: number, most: number): string =>
  "#".repeat(most === 0 ? 0 : Math.ceil((40 * count) / most));

export function simulationText(simulations: readonly JobSimulation[]): readonly string[] {
  return simulations.flatMap(({ job, simulation }) => {
    if (simulation === null) return [`${job}: no price, so no margin to simulate`, ""];
    const { draws, seed, mean, belowTarget, belowZero, target, histogram, uncertainty } =
      simulation;
    const most = Math.max(...histogram.map(({ count }) => count));
    const at = (share: number): string => shareText(marginAtShare(simulation, share));
    return [
      `${job}: ${draws} draws from seed ${seed}`,
      `  below the target of ${percentText(target)}: ${shareText(belowTarget)} of them, give or take ${shareText(uncertainty)}; at a loss: ${shareText(belowZero)}`,
      `  margin: mean ${shareText(mean)}, one in ten below ${at(0.1)}, half below ${at(0.5)}, one in ten above ${at(0.9)}`,
      ...textTable(
        [...columns([], ["From", "To", "Draws"]), ...columns([""], [])],
        histogram.map(({ from, to, count }) => [
          shareText(from),
          shareText(to),
          String(count),
          bar(count, most),
        ]),
      ).map((line) => `  ${line}`),
      "",
    ];
  });
}

export function actualsText(report: ActualsReport, currency: Currency): readonly string[] {
  if (report.jobs.length === 0) {
    return ["No actuals are typed: use --actuals-for JOB --out FILE to get a sheet for them."];
  }
  const money = (amount: number): string => moneyText(cents(amount), currency);
  const hours = (minutes: number): string => (minutes / 60).toFixed(2);
  return [
    ...textTable(
      columns(["Done"], ["Estimated", "Actual", "Over", "Not typed"]),
      report.outcomes.map(({ job, estimated, actual, over, notTyped }) => [
        job,
        money(estimated),
        money(actual),
        money(over),
        String(notTyped.length),
      ]),
    ),
    "",
    ...textTable(
      columns(["Cost or bag"], ["Estimated", "Actual", "Over", "Share"]),
      [
        ...report.costs.map((one) => ({ ...one, write: money })),
        ...report.bags.map((one) => ({ ...one, name: `${one.name}, hours`, write: hours })),
      ].map(({ name, estimated, actual, over, share, write }) => [
        name,
        write(estimated),
        write(actual),
        write(over),
        shareText(share),
      ]),
    ),
    "",
    ...report.suggestions.map(({ kind, row, item, from, to, because, place }, index) => {
      const where = place === null ? `the starter's ${row}` : placeName(place);
      return `SUGGESTED ${index + 1}: ${kind} of ${item} (${where}): ${to} instead of ${from}. ${because}.`;
    }),
  ];
}
