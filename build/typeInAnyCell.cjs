/**
 * A webpack loader for the grid's cell editor, which is as wide as the screen leaves room beside its
 * cell. For a cell that is out of sight, or wider than the screen, that is no room at all; nothing is
 * laid out then, and all letters but the first are lost. It gets at least the cell's own width.
 *
 * @throws Error when the editor no longer has the words that are replaced, so that an update shows.
 */
const room = "maxWidth = maxWidth - EDITOR_BORDER_SIZE * 2;";

module.exports = function typeInAnyCell(source) {
  if (!source.includes(room)) {
    throw new Error(`${this.resourcePath} no longer measures its editor the way it did.`);
  }
  return source.replace(
    room,
    "maxWidth = Math.max(maxWidth - EDITOR_BORDER_SIZE * 2, endX - startX);",
  );
};
