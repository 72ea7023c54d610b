/** The kit book that a workbook counts by, compiled, with what its checks need beside it. */
import type { Finding } from "../../core/base/finding";
import type { Inches } from "../../core/base/units";
import { compileKitBook } from "../../core/kitbook/compileKitBook";
import type { KitBook } from "../../core/kitbook/kitBook";
import type { KitBookRows } from "../../core/kitbook/rows";
import { headingsOf } from "../../core/estimate/estimate";
import type { LengthUnit } from "../../core/lengths/length";
import type { LengthStyle } from "../../core/lengths/writeLength";
import { checkItems, type Items } from "../../core/pricing/item";
import { kitBookEditionFindings } from "../../tables/kitBookEditions";
import { kitBookTableFindings } from "../../tables/kitBookTable";
import type { Inputs } from "../reading/inputs";
import { currencyIn, lengthStyleOf, lengthWriter, type Settings } from "../settings";

export type KitBookAtHand = {
  /** As typed. */
  readonly rows: KitBookRows;
  readonly book: KitBook;
  readonly isStarter: boolean;
  readonly items: Items;
  /** What is wrong with the book's rows and headings. */
  readonly findings: readonly Finding[];
  readonly unit: LengthUnit;
  readonly lengths: LengthStyle;
  readonly show: (length: Inches) => string;
};

/** What reading the book's sheets may have found. */
const readingFindings = { ...kitBookTableFindings, ...kitBookEditionFindings };

/** The further headings of the workbook's schedules are fields of the book. */
export function kitBookAtHand(inputs: Inputs, settings: Settings): KitBookAtHand {
  const { book, findings } = compileKitBook(inputs.kitBook, headingsOf(inputs.schedules));
  return {
    rows: inputs.kitBook,
    book,
    isStarter: !inputs.hasOwnKitBook,
    items: checkItems(inputs.items, currencyIn(settings)).items,
    findings: [
      ...inputs.findings.filter(({ code }) => Object.hasOwn(readingFindings, code)),
      ...findings,
    ],
    unit: settings.unit,
    lengths: lengthStyleOf(settings),
    show: lengthWriter(settings),
  };
}
