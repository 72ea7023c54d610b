/**
 * A webpack loader for the solver's own loader, which can run in Node too: what only Node has is
 * taken out, and its address in a page is the page's, not that of the file it was built from.
 *
 * @throws Error when the package no longer has the words that are replaced, so that an update shows.
 */
const changes = [
  [/if\(ENVIRONMENT_IS_NODE\)\{const\{createRequire\}=await import\("node:module"\);.*?\}/, ""],
  [/var _scriptName=import\.meta\.url;/, "var _scriptName=globalThis.location.href;"],
];

module.exports = function solverInPages(source) {
  return changes.reduce((text, [words, others]) => {
    if (!words.test(text)) throw new Error(`${this.resourcePath} no longer has ${words}.`);
    return text.replace(words, others);
  }, source);
};
