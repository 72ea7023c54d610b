/**
 * The order as one JSON object. Money is decimal strings; sizes are text as in the take-off's JSON, and
 * lengths of bars, pieces and offcuts are numbers in the unit of the first workbook.
 *
 * `onHand` is all that covers the need already, so that need + spares - onHand = buy. Lengths that are
 * cut have their cost with the line of their bars. A share with no job is stock's. `number` is that of
 * the kept order, and `split` which part of the whole it is; `null` for none.
 */
import { dateText } from "../../core/base/date";
import { findingCell } from "../../core/base/finding";
import type { Inches } from "../../core/base/units";
import { decimalText } from "../../core/money/writeMoney";
import { numberStyle, writeSize } from "../../core/lengths/writeLength";
import { inchesOf, type CutLength } from "../../core/purchasing/cutting/cutLength";
import { barGroups } from "../../core/purchasing/cutting/cutWords";
import type { OrderLine } from "../../core/purchasing/orders/orderPlan";
import type { Share } from "../../core/purchasing/orders/shares";
import type { JobsOrder } from "../../app/orders/orderJobs";
import { currencyIn } from "../../app/settings";
import type { OrderSaid } from "./orderText";

export function orderJson(
  { plan, settings, findings, complete }: JobsOrder,
  { split, number }: OrderSaid,
) {
  const currency = currencyIn(settings);
  const money = (amount: Parameters<typeof decimalText>[0]): string =>
    decimalText(amount, currency);
  const sizeText = (size: readonly Inches[]): string | null => {
    if (size.length === 0) return null;
    if (settings.unit === "in") return writeSize(size, numberStyle);
    return writeSize(size, { kind: "mm" }).replaceAll(" mm", "");
  };
  const lengthNumber = (length: CutLength): number =>
    Number((inchesOf(length) * (settings.unit === "in" ? 1 : 25.4)).toPrecision(12));
  const shares = (all: readonly Share[]) =>
    all.map(({ job, cost }) => ({ job, cost: money(cost) }));
  const needed = ({ need, buy }: OrderLine) =>
    need === null
      ? { need: buy, spares: 0, onHand: 0 }
      : {
          need: need.counted,
          spares: need.spares,
          onHand: need.covered + need.fromHand + need.fromOrder,
        };
  return {
    complete,
    number,
    split:
      split === null
        ? null
        : {
            part: split.part,
            nextOrderDay: dateText(split.nextOrderDay),
            costsMore: money(split.costsMore),
          },
    lines: plan.lines.map((line) => ({
      item: line.item,
      size: sizeText(line.size),
      ...needed(line),
      buy: line.buy,
      packs: line.packs.map(({ offer, count, cost }) => ({
        supplier: offer.supplier,
        packSize: offer.packSize,
        count,
        price: money(offer.price),
        cost: money(cost),
      })),
      leftOver: line.leftOver,
      shares: shares(line.shares),
    })),
    cutPlan: plan.cutPlans.map((cuts) => ({
      item: cuts.item,
      bars: barGroups(cuts).map((group) => ({
        stock: lengthNumber(group.length),
        count: group.bars.length,
        pieces: (group.bars[0]?.pieces ?? []).map(({ length }) => lengthNumber(length)),
        offcut: lengthNumber(group.offcut),
      })),
      cost: money(cuts.cost),
      lowerBound: money(cuts.lowerBound),
      proven: cuts.proven,
    })),
    charges: plan.charges.map((charge) => ({
      supplier: charge.supplier,
      goods: money(charge.goods),
      madeUp: money(charge.madeUp),
      freight: money(charge.freight),
      shares: shares(charge.shares),
    })),
    total: money(plan.total),
    savedAgainstJobByJob: plan.saved === null ? null : money(plan.saved.money),
    findings: findings.map(({ file, finding }) => ({
      code: finding.code,
      level: finding.level,
      file,
      cell: findingCell(finding),
      found: finding.found,
      message: finding.message,
    })),
  };
}
