/**
 * The quotation: what the customer sees. Plain values only, since a formula or a note could carry
 * what the price is made of.
 */
import { dateText } from "../../core/base/date";
import { majorUnits } from "../../core/money/writeMoney";
import type { Quotation } from "../../core/pricing/quotation";
import type { Drawing, DrawnRow, Look } from "../../workbook/drawing";
import { bandRow, blankRow, headingRow, number, row, text, wordsRow } from "../cells";
import { printSetup } from "../printSetup";

const headings = [
  { words: "Mark", width: 16 },
  { words: "Type", width: 34 },
  { words: "Size", width: 26 },
  { words: "Hand", width: 12 },
  { words: "How many", width: 18, numbers: true },
] as const;
const width = headings.length;

export function quotationSheet(quoted: Quotation, currencySign: string): Drawing {
  const { project, scope, price, salesTax, priceWithTax, alternates } = quoted;
  const above: readonly DrawnRow[] = [
    wordsRow("Quotation", "title", width, { height: 26 }),
    ...about("From", quoted.firm),
    ...about("For", quoted.customer),
    ...about("Project", project),
    ...about("Number", quoted.number),
    ...about("Date", dateText(quoted.date)),
    ...about("Valid until", dateText(quoted.validUntil)),
    blankRow,
    headingRow(headings),
  ];
  const amount = (words: string, value: Quotation["price"], look: Look): DrawnRow =>
    bandRow(look, width, {
      0: text(words),
      4: number(majorUnits(value), "money"),
    });
  return {
    name: "Quotation",
    mark: null,
    columnWidths: headings.map((column) => column.width),
    rows: [
      ...above,
      ...scope.map(({ mark, type, size, hand, quantity }) =>
        row(text(mark), text(type), text(size), text(hand), number(quantity, "count")),
      ),
      bandRow("total", width, { 0: text("Openings"), 4: number(quoted.openings, "count") }),
      blankRow,
      amount(`Price in ${currencySign}`, price, "total"),
      ...(salesTax === null
        ? []
        : [
            amount("Sales tax", salesTax, "body"),
            amount(`Price with tax in ${currencySign}`, priceWithTax, "total"),
          ]),
      ...(alternates.length === 0
        ? []
        : [
            blankRow,
            wordsRow("Alternates and options: what each adds to the price", "group", width),
            ...alternates.map(({ name, kind, addsPrice }) =>
              amount(`${name} (${kind})`, addsPrice, "body"),
            ),
          ]),
      ...listed("Included", quoted.inclusions),
      ...listed("Not included", quoted.exclusions),
      ...listed("Notes", quoted.notes),
      blankRow,
      wordsRow(quoted.caution, "caution", width, { wrap: true, height: 34 }),
    ],
    frozenRows: 0,
    frozenColumns: 0,
    tables: [],
    choices: [],
    print: printSetup({
      headingRow: above.length - 1,
      subject: project,
      title: "Quotation",
      caution: "",
    }),
  };
}

const about = (label: string, words: string): readonly DrawnRow[] =>
  words === "" ? [] : [row(text(label, { look: "muted" }), text(words, { span: width - 2 }))];

const listed = (title: string, lines: readonly string[]): readonly DrawnRow[] =>
  lines.length === 0
    ? []
    : [
        blankRow,
        wordsRow(title, "group", width),
        ...lines.map((line) => wordsRow(line, "body", width, { wrap: true })),
      ];
