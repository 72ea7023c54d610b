/** How the printed sheets are set up: one page wide, their heading on each page, pages numbered. */
import type { PrintSetup } from "../workbook/drawing";

export type PrintWish = {
  readonly orientation?: PrintSetup["orientation"];
  /** The row repeated on top of each page: the heading row. */
  readonly headingRow: number;
  /** So many columns from the first on are printed; all where absent. */
  readonly columns?: number;
  readonly breaksBefore?: readonly number[];
  /** On the left of the header, such as the job. */
  readonly subject: string;
  /** On the right of the header: what sheet it is. */
  readonly title: string;
  /** On the left of the footer: a short caution, or the empty text. */
  readonly caution: string;
};

/** Tabs in the texts would move them to another place of the page, so they become spaces. */
export const printSetup = (wish: PrintWish): PrintSetup => ({
  orientation: wish.orientation ?? "portrait",
  titleRows: { first: wish.headingRow, last: wish.headingRow },
  ...(wish.columns === undefined ? {} : { columns: { first: 0, last: wish.columns - 1 } }),
  fitToOnePageWide: true,
  breaksBefore: wish.breaksBefore ?? [],
  header: `${oneLine(wish.subject)}\t\t${oneLine(wish.title)}`,
  footer: `${oneLine(wish.caution)}\t\tPage {page} of {pages}`,
});

const oneLine = (words: string): string => words.replace(/\s+/g, " ").trim();
