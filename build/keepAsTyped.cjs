/**
 * A webpack loader for the grid's core, which takes `7'` for the number 7 (some countries write 7'000)
 * and `7'6` for 76. On a schedule of openings that is feet: what has such a mark stays as it was typed.
 * Nor is a mark such as `0B1` the number 1, as programs write numbers, or `Infinity` one.
 *
 * @throws Error when the core no longer has the words that are replaced, so that an update shows.
 */
const reading = "const getNumfmtParseValueFilter = (value) => {\n";
const isNumber = "return !isNaN(Number(trimmedVal));";

module.exports = function keepAsTyped(source) {
  if (!source.includes(reading) || !source.includes(isNumber)) {
    throw new Error(`${this.resourcePath} no longer reads what is typed the way it did.`);
  }
  return source
    .replace(reading, (found) => `${found}\tif (/['’′]/.test(value)) return null;\n`)
    .replace(
      isNumber,
      (found) => `if (/[box]|infinity/i.test(trimmedVal)) return false;\n\t\t${found}`,
    );
};
