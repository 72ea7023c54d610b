/** The parts of the embedded page: a slim bar, the spreadsheet, the pane and the line between them. */
import { ask, choose, showKeys, type Choice, type Question } from "./dialogs";
import { button, element } from "./elements";

export type PagePart = "grid" | "pane";

export type PageParts = {
  readonly grid: HTMLElement;
  readonly pane: HTMLElement;
  readonly open: HTMLButtonElement;
  readonly save: HTMLButtonElement;
  readonly startOver: HTMLButtonElement;
  readonly file: HTMLInputElement;
  /** On a narrow page, shows the one part and hides the other. */
  readonly showPart: (part: PagePart) => void;
  /** Whether the page is narrow and shows this part alone. */
  readonly isOnlyPart: (part: PagePart) => boolean;
  readonly setName: (name: string) => void;
  /** Says something in passing; a screen reader says it too. */
  readonly say: (text: string) => void;
  /** Says beside the cells why the selected one shows an error; `null` takes it away. */
  readonly sayReason: (words: string | null) => void;
  /** Says what went wrong, until it is closed. */
  readonly warn: (text: string) => void;
  /** Asks before something is lost. */
  readonly ask: (question: Question) => Promise<boolean>;
  /** Asks which way to go on; `null` is to leave things as they are. */
  readonly choose: <Way extends string>(choice: Choice<Way>) => Promise<Way | null>;
};

/** Builds the page inside `body`, which is empty. */
export function buildPage(body: HTMLElement): PageParts {
  const name = element("h1", { className: "page-name", textContent: "Cribsheet" });
  const status = element("span", { className: "page-status" }, { role: "status" });
  const open = button("Open file…");
  const save = button("Save .xlsx");
  const startOver = button("Start over");
  const keys = button("Keys");
  keys.addEventListener("click", () => void showKeys(body));
  const file = element("input", { type: "file", accept: ".xlsx,.csv", hidden: true });
  const bar = element("header", { className: "page-bar" });
  const grid = element("main", { className: "page-grid" }, { "aria-label": "Spreadsheet" });
  const pane = element(
    "aside",
    { className: "page-pane", tabIndex: -1 },
    { "aria-label": "Cribsheet" },
  );
  const parts = partSwitch(body);
  const between = paneDivider(body);
  const warning = element("div", { className: "page-warning", hidden: true }, { role: "alert" });
  const both = element("div", { className: "page-parts" });
  const reason = element("div", { className: "page-reason" }, { role: "status" });
  both.append(grid, reason, between, pane);
  bar.append(name, status, parts.buttons, open, save, startOver, keys, file);
  body.classList.add("page");
  parts.show("grid");
  body.append(bar, warning, both, element("div", { className: "page-drop" }));
  return {
    grid,
    pane,
    open,
    save,
    startOver,
    file,
    showPart: parts.show,
    isOnlyPart: (part) =>
      body.dataset["part"] === part && getComputedStyle(parts.buttons).display !== "none",
    setName: (text) => {
      name.textContent = text === "" ? "Cribsheet" : text;
      document.title = text === "" ? "Cribsheet" : `${text} · Cribsheet`;
    },
    say: (text) => {
      status.textContent = text;
    },
    sayReason: (words) => {
      reason.textContent = words ?? "";
    },
    warn: (text) => {
      const close = button("Close");
      close.addEventListener("click", () => {
        warning.hidden = true;
      });
      warning.replaceChildren(element("p", { textContent: text }), close);
      warning.hidden = false;
    },
    ask: (question) => ask(body, question),
    choose: (choice) => choose(body, choice),
  };
}

/** On a narrow page only one of the two parts shows; these two buttons choose. */
function partSwitch(body: HTMLElement): {
  readonly buttons: HTMLElement;
  readonly show: (part: PagePart) => void;
} {
  const group = element(
    "div",
    { className: "page-switch" },
    { role: "group", "aria-label": "Show" },
  );
  const choices = [
    ["grid", "Spreadsheet"],
    ["pane", "Cribsheet"],
  ] as const;
  const buttons = choices.map(([part, text]) => ({ part, choice: button(text) }));
  const show = (shown: PagePart): void => {
    body.dataset["part"] = shown;
    for (const { part, choice } of buttons) {
      choice.setAttribute("aria-pressed", String(part === shown));
    }
  };
  for (const { part, choice } of buttons) choice.addEventListener("click", () => show(part));
  group.append(...buttons.map(({ choice }) => choice));
  return { buttons: group, show };
}

const narrowestPane = 320;
const widestPane = 480;
const widthKey = "cribsheet.pane-width";

/** The line that sets how wide the pane is, by pointer or by arrow keys. */
function paneDivider(body: HTMLElement): HTMLElement {
  const divider = element(
    "div",
    { className: "page-divider", tabIndex: 0 },
    {
      role: "separator",
      "aria-orientation": "vertical",
      "aria-label": "Width of the pane",
      "aria-valuemin": String(narrowestPane),
      "aria-valuemax": String(widestPane),
    },
  );
  let width = Number(readStored(widthKey) ?? 360);
  const setWidth = (wanted: number): void => {
    width = Math.round(Math.min(widestPane, Math.max(narrowestPane, wanted)));
    body.style.setProperty("--pane-width", `${width}px`);
    divider.setAttribute("aria-valuenow", String(width));
    store(widthKey, String(width));
  };
  setWidth(Number.isFinite(width) ? width : 360);
  divider.addEventListener("pointerdown", (event) => {
    divider.setPointerCapture(event.pointerId);
    event.preventDefault();
  });
  divider.addEventListener("pointermove", (event) => {
    if (divider.hasPointerCapture(event.pointerId)) setWidth(innerWidth - event.clientX);
  });
  const steps: Readonly<Record<string, number>> = { ArrowLeft: 16, ArrowRight: -16 };
  divider.addEventListener("keydown", (event) => {
    const by = steps[event.key];
    if (by === undefined) return;
    setWidth(width + by);
    event.preventDefault();
  });
  return divider;
}

/** A browser may refuse to store anything; the page works without. */
function readStored(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

function store(key: string, text: string): void {
  try {
    localStorage.setItem(key, text);
  } catch {
    // The width is then what it is by itself at the next visit.
  }
}
