/** What the page shows in front of itself. Once it is closed, the keyboard is back where it was. */
import { button, element } from "./elements";
import { pageKeys } from "./pageKeys";

export type Question = {
  readonly title: string;
  readonly text: string;
  readonly yes: string;
  readonly no: string;
};

/** A question with several ways on; each has a name of ours and the words on its button. */
export type Choice<Way extends string> = {
  readonly title: string;
  readonly text: string;
  readonly ways: readonly (readonly [way: Way, words: string])[];
  readonly no: string;
};

/** Asks, and resolves to whether the answer was `yes`; Escape is `no`. */
export async function ask(body: HTMLElement, question: Question): Promise<boolean> {
  return (await choose(body, { ...question, ways: [["yes", question.yes]] })) === "yes";
}

/** Asks for one of several ways; `null` is none of them, as is Escape. */
export async function choose<Way extends string>(
  body: HTMLElement,
  { title, text, ways, no }: Choice<Way>,
): Promise<Way | null> {
  const buttons = ways.map(([way, words]) => button(words, way));
  const content = [element("p", { textContent: text })];
  const answer = await answered(body, title, content, [button(no, "no"), ...buttons]);
  return ways.find(([way]) => way === answer)?.[0] ?? null;
}

/** Shows what can be done by keyboard. */
export async function showKeys(body: HTMLElement): Promise<void> {
  const rows = pageKeys.map(([key, words]) => {
    const row = element("tr", {});
    row.append(
      element("th", { textContent: key, scope: "row" }),
      element("td", { textContent: words }),
    );
    return row;
  });
  const table = element("table", { className: "page-keys" });
  table.append(...rows);
  const mac = element("p", { textContent: "On a Mac, ⌘ for Ctrl and ⌥ for Alt." });
  await answered(body, "By keyboard", [table, mac], [button("Close", "no")]);
}

/** Resolves to the value of the button that closed the dialog. The first one has the keyboard. */
function answered(
  body: HTMLElement,
  title: string,
  content: readonly HTMLElement[],
  buttons: readonly HTMLButtonElement[],
): Promise<string> {
  const dialog = element("dialog", { className: "page-dialog" });
  const heading = element("h2", { textContent: title, id: "page-dialog" });
  const form = element("form", { method: "dialog" });
  for (const [index, each] of buttons.entries()) {
    each.type = "submit";
    each.autofocus = index === 0;
  }
  dialog.setAttribute("aria-labelledby", heading.id);
  form.append(...buttons);
  dialog.append(heading, ...content, form);
  body.append(dialog);
  dialog.showModal();
  // On a small screen the button with the keyboard is below what is to be read first.
  dialog.scrollTop = 0;
  return new Promise((resolve) => {
    dialog.addEventListener("close", () => {
      dialog.remove();
      resolve(dialog.returnValue);
    });
  });
}
