/**
 * A webpack loader for the grid's core, which takes `7'` for the number 7 (some countries write 7'000)
 * and `7'6` for 76. On a schedule of openings that is feet: what has such a mark stays as it was typed.
 *
 * @throws Error when the core no longer has the words that are replaced, so that an update shows.
 */
module.exports = function keepFootMarks(source) {
  const reading = "const getNumfmtParseValueFilter = (value) => {\n";
  if (!source.includes(reading)) {
    throw new Error(`${this.resourcePath} no longer reads what is typed the way it did.`);
  }
  return source.replace(reading, (found) => `${found}\tif (/['’′]/.test(value)) return null;\n`);
};
