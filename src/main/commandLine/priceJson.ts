/**
 * The prices as one JSON object: money as decimal strings, markup and margin as decimal strings of the
 * share (0.24 is 24 %), hours and weights as numbers.
 */
import { findingCell, type Finding } from "../../core/base/finding";
import { decimalText } from "../../core/money/writeMoney";
import { shareOf, shareText } from "../../core/pricing/percent";
import type { JobPrice } from "../../core/pricing/priceJob";

/** Digits of markup and margin behind the point. */
const ratioPlaces = 6;

export const priceJson = (
  jobs: readonly JobPrice[],
  findings: readonly Finding[],
  complete: boolean,
) => ({
  complete,
  jobs: jobs.map(({ job, rollUp, hours, shipment, freight, target, alternates }) => ({
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
      price: decimalText(alternate.rollUp.price),
    })),
  })),
  findings: findings.map((finding) => ({
    code: finding.code,
    level: finding.level,
    cell: findingCell(finding),
    found: finding.found,
    message: finding.message,
  })),
});
