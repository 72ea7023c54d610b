/**
 * The live formulas of a hardware row: what a correction typed on the sheet makes of the count, and
 * the spares that follow it. They give just what the core gives for the same cells.
 */
import type { SparesPolicy } from "../../core/pricing/item";

/**
 * The count in cell `counted` with the correction in cell `correction`: `+3`, `-2`, `=14`, `14`.
 * Anything else leaves the count as it is, such as `1/2`, which VALUE would take for a date.
 */
export function correctedFormula(counted: string, correction: string): string {
  const typed = `TRIM(${correction})`;
  const value = `VALUE(SUBSTITUTE(${correction},"=",""))`;
  const number = `TEXT(${value},"0")`;
  const signed = `IF(${counted}+${value}<0,${counted},${counted}+${value})`;
  const instead = `IF(OR(${typed}=${number},${typed}="="&${number}),${value},${counted})`;
  const changed = `IF(${typed}=TEXT(${value},"+0;-0;+0"),${signed},${instead})`;
  return `IF(${correction}="",${counted},IFERROR(${changed},${counted}))`;
}

/** The spares by an item's rule for the quantity in a cell. */
export function sparesFormula(quantity: string, { percent, least }: SparesPolicy): string {
  // Rounded first: 5 % of 140 must be 7 and not the next whole number above 7.000000000000001.
  const share = `ROUNDUP(ROUND(${quantity}*${percent}/100,9),0)`;
  const spares = percent === 0 ? String(least) : least === 0 ? share : `MAX(${share},${least})`;
  return `IF(${quantity}=0,0,${spares})`;
}
