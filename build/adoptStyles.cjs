/**
 * A webpack loader for packages that put their styles into the page as `<style>` text, which the
 * content policy forbids. Their text goes into a constructed style sheet instead.
 *
 * @throws Error when a package no longer has the words that are replaced, so that an update shows.
 */
module.exports = function adoptStyles(source) {
  const inserted = /\w+\.appendChild\(document\.createTextNode\((\w+)\)\)/g;
  if (!inserted.test(source)) {
    throw new Error(`${this.resourcePath} no longer inserts its styles the way it did.`);
  }
  return source.replace(
    inserted,
    (_, text) =>
      `((sheet) => { sheet.replaceSync(${text}); document.adoptedStyleSheets.push(sheet); })(new CSSStyleSheet())`,
  );
};
