/** The demo's purchasing sheets. Every supplier, price, date and count is invented. */
import { dateSerial } from "../../core/base/date";
import type { CellValue } from "../../core/base/cell";
import { starterItems } from "../../core/kitbook/starter/items";
import {
  jobDatesSheet,
  offersSheet,
  orderRulesSheet,
  stockSheet,
  suppliersSheet,
  type TypedRows,
} from "../../sheets/orders/purchasingSheets";
import type { Drawing } from "../../workbook/drawing";

const notice = (what: string): string => `Demo: ${what} on this sheet are invented.`;

const [bolts, steel, mill] = ["Elmwood Fastening", "Fernhill Steel", "Greenbank Millwork"] as const;
const priced = "2026-10-01";
const money = (amount: number): number => Math.round(amount * 100) / 100;

/** Stock lengths in feet, with what a foot costs against the items sheet. */
const bars = [
  [10, 1.12],
  [20, 1],
  [24, 0.97],
] as const;

type Row = readonly CellValue[];

function offersOf({ code, family, unit, unitCost }: (typeof starterItems)[number]): readonly Row[] {
  const item = code.value;
  const cost = Number(unitCost.value);
  if (family.value === "Fasteners" || family.value === "Anchors") {
    return [
      [item, null, bolts, 25, money(cost * 25), 1, 1, 3, priced],
      [item, null, bolts, 100, money(cost * 100 * 0.88), 1, 1, 3, priced],
      [item, null, bolts, 100, money(cost * 100 * 0.8), 5, 1, 3, priced],
      [item, null, steel, 50, money(cost * 50 * 0.93), 1, 2, 5, priced],
    ];
  }
  if (unit.value === "foot") {
    return bars.map(([feet, part]) => [
      item,
      `${feet}'-0"`,
      steel,
      1,
      money(cost * feet * part),
      1,
      1,
      8,
      priced,
    ]);
  }
  if (unit.value === "square foot") {
    return [[item, null, mill, 1, cost, 1, 1, 15, priced]];
  }
  return [
    [item, null, steel, 1, cost, 1, 1, 5, priced],
    [item, null, mill, 1, money(cost * 1.04), 1, 1, 10, priced],
    [item, null, mill, 10, money(cost * 9.4), 1, 1, 10, priced],
  ];
}

const day = (year: number, month: number, date: number): CellValue => ({
  kind: "date",
  serial: dateSerial(year, month, date) ?? 0,
});

const stock: TypedRows = [
  ["HN 1/4", null, 40, null],
  ["CB 1/4 x 3/4", null, 15, null],
  ["TROLLEY", null, 3, 2],
  ["TRACK", "9'-6\"", 1, null],
  ["TRACK", "6'-2\"", 2, null],
  ["ANGLE", "4'-8\"", 3, null],
];

const dates: TypedRows = [
  ["Tool crib, Alder plant", day(2027, 1, 22), "Alder plant, gate 2 (invented)"],
  ["Stock room, Birch depot", day(2027, 2, 12), "Birch depot, receiving (invented)"],
  ["Plant cage, Cedar works", day(2027, 2, 26), "Cedar works, door 5 (invented)"],
];

const suppliers: TypedRows = [
  [bolts, 75, 14.5],
  [steel, 250, 85],
  [mill, 0, 60],
];

export const demoPurchasing = (): readonly Drawing[] => [
  offersSheet(starterItems.flatMap(offersOf), notice("suppliers and prices")),
  stockSheet(stock, notice("counts")),
  jobDatesSheet(dates, notice("jobs, dates and addresses")),
  suppliersSheet(suppliers, notice("suppliers and their terms")),
  orderRulesSheet(
    [day(2026, 11, 26), day(2026, 12, 25), day(2027, 1, 1)],
    notice("rules and holidays"),
  ),
];
