/** What is wrong for a screen reader in what is shown. */
import axe from "axe-core";

/** Contrast, which differs in light and dark, needs a browser that draws; the page around the pane brings its landmarks and title. */
const rules = { "color-contrast": { enabled: false }, region: { enabled: false } };

export async function axeFaults(): Promise<readonly string[]> {
  const { violations } = await axe.run(document.body, { rules });
  return violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ html }) => `${id}: ${help} ${html.slice(0, 200)}`),
  );
}
