/** Names of spreadsheet tables: letters, digits, `_` and `.`; unlike every other name of the workbook. */

/** `wanted` made acceptable and unlike every name in `taken`, whatever the case: `Lines`, then `Lines_2`. */
export function freeTableName(wanted: string, taken: Iterable<string>): string {
  const used = new Set(Array.from(taken, (name) => name.toLowerCase()));
  const name = acceptableName(wanted);
  for (let count = 1; ; count++) {
    const tried = count === 1 ? name : `${name}_${count}`;
    if (!used.has(tried.toLowerCase())) return tried;
  }
}

/** At most 255 characters; starts with a letter or `_`; nothing that could be a cell. */
function acceptableName(wanted: string): string {
  const name = wanted.replace(/[^\p{L}\p{N}_.]+/gu, "_").slice(0, 240);
  const couldBeCell = /^(?:[A-Za-z]{1,3}\d+|[Rr]\d*[Cc]\d*|[RrCc])$/.test(name);
  return couldBeCell || !/^[\p{L}_]/u.test(name) ? `_${name}` : name;
}
