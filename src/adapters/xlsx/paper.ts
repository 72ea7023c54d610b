/** Paper and margins in a worksheet part. */
import { papers, type Margins, type Paper, type PrintSetup } from "../../workbook/drawing";
import { childNamed, type XmlElement } from "./xml";

/** The numbers that files have for papers (ECMA-376 part 1, 18.3.1.63). */
const paperNumbers: Readonly<Record<Paper, number>> = { letter: 1, a4: 9 };

/** Inches, where a drawing names none. */
const defaultMargins: Margins = { left: 0.5, right: 0.5, top: 0.75, bottom: 0.75 };
const sides = ["left", "right", "top", "bottom"] as const;

/** The attribute of `pageSetup`, with a space before it. */
export const paperAttribute = ({ paper }: PrintSetup): string =>
  paper === undefined ? "" : ` paperSize="${paperNumbers[paper]}"`;

/** Headers and footers stand within the margins. */
export function marginsXml({ margins = defaultMargins }: PrintSetup): string {
  const own = sides.map((side) => `${side}="${margins[side]}"`).join(" ");
  const [header, footer] = [Math.min(0.3, margins.top), Math.min(0.3, margins.bottom)];
  return `<pageMargins ${own} header="${header}" footer="${footer}"/>`;
}

/** The paper and margins of a worksheet, where they are not those that we write by ourselves. */
export function readPaper(root: XmlElement): Pick<PrintSetup, "paper" | "margins"> {
  const number = childNamed(root, "pageSetup")?.attributes["paperSize"];
  const paper = papers.find((each) => number === String(paperNumbers[each]));
  const given = childNamed(root, "pageMargins")?.attributes ?? {};
  const margins = { ...defaultMargins };
  for (const side of sides) {
    const inches = Number(given[side] ?? margins[side]);
    if (Number.isFinite(inches)) margins[side] = inches;
  }
  const isPlain = sides.every((side) => margins[side] === defaultMargins[side]);
  return { ...(paper === undefined ? {} : { paper }), ...(isPlain ? {} : { margins }) };
}
