/** What the page shows in front of itself. Once it is closed, the keyboard is back where it was. */
import { button, element } from "./elements";
import { pageKeys } from "./pageKeys";

export type Question = {
  readonly title: string;
  readonly text: string;
  readonly yes: string;
  readonly no: string;
};

/** Asks, and resolves to whether the answer was `yes`; Escape is `no`. */
export async function ask(body: HTMLElement, question: Question): Promise<boolean> {
  const agree = button(question.yes, "yes");
  const decline = button(question.no, "no");
  const text = element("p", { textContent: question.text });
  return (await answered(body, question.title, [text], [decline, agree])) === "yes";
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
