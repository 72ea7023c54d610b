/** Whether a number format shows a number as a date or a time. Hosts tell dates from numbers by it. */

/**
 * `yyyy-mm-dd`, `[h]:mm` and `m/d/yy h:mm AM/PM` do; `#,##0.00`, `0.0E+00` and `General` do not.
 * Quoted words, colours, currencies and conditions in the code don't count.
 */
export function isDateFormat(code: string): boolean {
  const bare = code
    .replace(/"[^"]*"?/g, "")
    // A backslash shows the next character as it is; `_` leaves its width; `*` repeats it.
    .replace(/[\\_*]./g, "")
    // Elapsed time is in brackets of one letter; all other brackets hold colours and the like.
    .replace(/\[(h+|m+|s+)\]/gi, "h")
    .replace(/\[[^\]]*\]/g, "");
  return bare.split(";").some((section) => !/general/i.test(section) && /[dmyhs]/i.test(section));
}
