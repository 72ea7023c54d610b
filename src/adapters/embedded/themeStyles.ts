/**
 * The grid's colours as a constructed style sheet. The grid itself would put them into the page as
 * text of a `<style>`, which the content policy forbids.
 */
import { Disposable } from "@univerjs/core";

type Theme = { readonly [name: string]: string | Theme };

/** Stands in for the grid's own service of this kind; the grid asks for these two methods. */
export class AdoptedThemeStyles extends Disposable {
  readonly #sheet = new CSSStyleSheet();

  injectThemeToHead(theme: object): void {
    const variables = themeVariables(theme as Theme, "--univer").join("\n");
    this.#sheet.replaceSync(`:root {\n${variables}\n}`);
    if (!document.adoptedStyleSheets.includes(this.#sheet)) {
      document.adoptedStyleSheets.push(this.#sheet);
    }
  }

  override dispose(): void {
    super.dispose();
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter(
      (sheet) => sheet !== this.#sheet,
    );
  }
}

/** `{ gray: { 100: "#eee" } }` becomes `--univer-gray-100: #eee;`. */
const themeVariables = (theme: Theme, prefix: string): string[] =>
  Object.entries(theme).flatMap(([name, value]) =>
    typeof value === "string"
      ? [`${prefix}-${name}: ${value};`]
      : themeVariables(value, `${prefix}-${name}`),
  );
