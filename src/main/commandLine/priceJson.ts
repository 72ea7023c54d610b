/**
 * The prices as one JSON object: money as decimal strings, markup and margin as decimal strings of the
 * share (0.24 is 24 %), hours and weights as numbers.
 */
import { placeName } from "../../core/base/cell";
import { findingCell, type Finding } from "../../core/base/finding";
import { cents } from "../../core/base/units";
import { decimalText } from "../../core/money/writeMoney";
import { shareOf, shareText } from "../../core/pricing/rates/percent";
import type { Difference } from "../../core/pricing/actuals/actuals";
import type { JobLoads } from "../../core/pricing/loads/openingLoads";
import type { JobPrice } from "../../core/pricing/priceJob";
import { marginAtShare } from "../../core/pricing/chances/simulation";
import type { WorkbookLoads } from "../../app/pricing/workbookLoads";
import type { OwnerAnswers } from "./ownerAnswers";

/** Digits of markup and margin behind the point. */
const ratioPlaces = 6;

export const priceJson = (
  jobs: readonly JobPrice[],
  loads: WorkbookLoads,
  findings: readonly Finding[],
  complete: boolean,
) => ({
  complete,
  jobs: jobs.map(({ job, rollUp, hours, shipment, freight, target, alternates }, index) => ({
    job,
    lines: rollUp.lines.map(({ key, label, amount, words }) => ({
      key,
      label,
      amount: decimalText(amount),
      how: words,
    })),
    cost: decimalText(rollUp.cost),
    price: decimalText(rollUp.price),
    profit: decimalText(rollUp.profit),
    markup: shareText(rollUp.profit, rollUp.cost, ratioPlaces),
    margin: shareText(rollUp.profit, rollUp.price, ratioPlaces),
    targetMargin: String(shareOf(target)),
    priceWithTax: decimalText(rollUp.priceWithTax),
    hours: hours.hundredths / 100,
    bags: hours.bags.map(({ bag, minutes }) => ({ bag, hours: minutes / 60 })),
    weight: shipment.weight,
    billedWeight: freight?.billed ?? null,
    notPriced: rollUp.notPriced,
    alternates: alternates.map((alternate) => ({
      name: alternate.name,
      kind: alternate.kind,
      addsCost: decimalText(alternate.addsCost),
      addsPrice: decimalText(alternate.addsPrice),
      addsHours: alternate.addsHours / 100,
      how: alternate.how,
      notPriced: alternate.notPriced,
      price: decimalText(alternate.rollUp.price),
    })),
    loads: loadsOf(loads.jobs[index]),
  })),
  findings: findings.map((finding) => ({
    code: finding.code,
    level: finding.level,
    cell: findingCell(finding),
    found: finding.found,
    message: finding.message,
  })),
});

/** Inches, pounds and inch-pounds as numbers; `null` is not known or not entered. */
const loadsOf = (loads: JobLoads | undefined) =>
  (loads?.openings ?? []).map(({ opening, leaves, leafWeight, loads: along, checked }) => ({
    mark: opening.mark,
    leaves,
    leafWeight,
    verdict: checked.verdict,
    pastLastHanger: along?.beyond ?? null,
    checks: checked.checks,
  }));

/** What was asked for beyond the prices: a field for each. Margins, swings and chances are numbers, 0.24 for 24 %. */
export const ownerJson = ({ whatIf, simulations, actuals }: OwnerAnswers) => ({
  ...(whatIf === null
    ? {}
    : {
        whatIf: whatIf.table.rows.map(({ job, answer }, index) => ({
          job: job.job,
          cost: decimalText(answer.rollUp.cost),
          price: decimalText(answer.rollUp.price),
          margin: shareText(answer.rollUp.profit, answer.rollUp.price, ratioPlaces),
          addsCost: decimalText(answer.addsCost),
          addsProfit: decimalText(answer.addsProfit),
          priceThatKeepsTarget: decimalText(answer.priceThatKeeps),
          discountThatKeepsTarget: decimalText(answer.discountThatKeeps.amount),
          breakEvenPrice: decimalText(answer.breakEvenPrice),
          swings: (whatIf.swings[index]?.swings ?? []).map((swing) => ({
            of: swing.name,
            low: shareOf(swing.low),
            high: shareOf(swing.high),
            marginAtLow: swing.marginAtLow,
            marginAtHigh: swing.marginAtHigh,
            swing: swing.swing,
          })),
        })),
      }),
  ...(simulations === null
    ? {}
    : {
        simulation: simulations.map(({ job, simulation }) => ({
          job,
          ...(simulation === null
            ? { draws: 0 }
            : {
                draws: simulation.draws,
                seed: simulation.seed,
                mean: simulation.mean,
                deviation: simulation.deviation,
                belowTarget: simulation.belowTarget,
                belowZero: simulation.belowZero,
                quantiles: Object.fromEntries(
                  [0.05, 0.1, 0.25, 0.5, 0.75, 0.9, 0.95].map((share) => [
                    String(share),
                    marginAtShare(simulation, share),
                  ]),
                ),
                histogram: simulation.histogram,
              }),
        })),
      }),
  ...(actuals === null
    ? {}
    : {
        actuals: {
          jobs: actuals.outcomes.map(({ job, estimated, actual, over, notTyped }) => ({
            job,
            estimated: decimalText(estimated),
            actual: decimalText(actual),
            over: decimalText(over),
            notTyped,
          })),
          costs: actuals.costs.map((one) => difference(one, (value) => decimalText(cents(value)))),
          hours: actuals.bags.map((one) => difference(one, (value) => value / 60)),
          suggestions: actuals.suggestions.map(({ place, ...suggestion }) => ({
            ...suggestion,
            cell: place === null ? "" : placeName(place),
          })),
        },
      }),
});

const difference = <Written>(
  { name, estimated, actual, over, share }: Difference,
  write: (value: number) => Written,
) => ({ name, estimated: write(estimated), actual: write(actual), over: write(over), share });
