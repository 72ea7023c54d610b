/**
 * The grid's own buttons and fields for those who hear or tab through them. It draws them as pictures
 * without words, and gives Tab stops to what nobody sees or what cannot keep the keyboard.
 */
import { LocaleService } from "@univerjs/core";
import { IMenuManagerService, MenuManagerPosition } from "@univerjs/ui";
import type { Engine } from "./engine";
import "./gridControls.css";

/** What cannot be named from the grid's own words: where it is, and the words in order of appearance. */
const ownWords: readonly (readonly [selector: string, ...words: string[]])[] = [
  ["[data-u-comp=ribbon-toolbar]", "Formats"],
  ["[data-u-comp=defined-name] input", "Selected cells"],
  ["[data-u-comp=defined-name] > a", "Names of cells"],
  ["[data-u-comp=formula-bar] button", "Stop working out"],
  ["footer [aria-haspopup]:not(button)", "All sheets"],
  [
    "[data-u-comp=sheet-bar-append-button]",
    "Add a sheet",
    "All sheets",
    "Sheets before",
    "Sheets behind",
  ],
  ["[data-u-command='sheet.command.toggle-gridlines']", "Lines between cells"],
  ["footer [data-u-comp=button]", "Smaller", "Larger"],
  ["footer [role=none] > button", "Zoom"],
  ["footer a[role=button]", "Full size"],
  ["canvas[id^=univer-sheet-main-canvas]", "Cells"],
  ["[id$=DOCS_NORMAL][data-u-comp=editor]", "Cells"],
  ["[id$=FORMULA_BAR][data-u-comp=editor]", "Formula"],
  ["section[aria-live]", "News of the spreadsheet", "Notices of the spreadsheet"],
];

/** Roles of what the grid gives none, or one that there is not. */
const roles: readonly (readonly [selector: string, role: string])[] = [
  ["canvas[id^=univer-sheet-main-canvas]", "application"],
  ["[data-u-comp=editor]", "textbox"],
  ["[data-u-comp=defined-name] > a", "button"],
  ["footer [aria-haspopup]:not(button)", "combobox"],
  ["[role=track]", "none"],
];

/** What a person cannot stay at: the grid gives the keyboard to the cells at once, or it is out of sight. */
const passedOver = [
  "[data-u-comp=editor]",
  "canvas[id=univer-doc-main-canvas]",
  "[data-u-comp=sheet-bar-append-button]",
  "footer [data-u-comp=button]",
  "footer [role=none] > button",
].join();

/** Names what is in `container`, and what comes into it later. Once an engine. */
export function nameGridControls(engine: Engine, container: HTMLElement): void {
  let words: ReadonlyMap<string, string> = new Map();
  const wordsOf = (command: string): string | undefined => {
    if (!words.has(command)) words = toolbarWords(engine);
    return words.get(command);
  };
  const name = (): void => {
    for (const [selector, role] of roles) {
      for (const each of document.querySelectorAll(selector)) setRole(each, role);
    }
    for (const each of container.querySelectorAll("[role=handle]")) each.removeAttribute("role");
    for (const [selector, ...names] of ownWords) {
      for (const [index, each] of document.querySelectorAll(selector).entries()) {
        setName(each, names[index]);
      }
    }
    for (const each of container.querySelectorAll<HTMLElement>("[data-u-command]")) {
      nameCommand(each, wordsOf(each.dataset["uCommand"] ?? ""));
    }
    for (const each of document.querySelectorAll<HTMLElement>(passedOver)) each.tabIndex = -1;
    for (const each of container.querySelectorAll<HTMLElement>("[data-u-comp=defined-name] > a")) {
      each.tabIndex = 0;
    }
    // Made before there was a grid on the page, and left outside; the grid takes it in when it is used.
    const stray = document.querySelector("body > [id$=DOCS_FORMULA_BAR]");
    if (stray !== null) container.append(stray);
    for (const each of container.querySelectorAll<HTMLElement>("canvas[id^=univer-sheet-main]")) {
      each.tabIndex = 0;
    }
  };
  const observer = new MutationObserver(name);
  observer.observe(container, { childList: true, subtree: true });
  observer.observe(document.body, { childList: true });
  container.addEventListener("keydown", pressByKey);
  name();
}

/** What looks like a button and is none opens by Enter and by the space bar too. */
function pressByKey(event: KeyboardEvent): void {
  const { key, target } = event;
  const isOpener = target instanceof HTMLElement && target.matches("[data-slot=popover-trigger]");
  if (!isOpener || target instanceof HTMLButtonElement || (key !== "Enter" && key !== " ")) return;
  event.preventDefault();
  target.click();
}

/** A button, or a field or a list that looks like one. */
function nameCommand(control: HTMLElement, words: string | undefined): void {
  const field = control.querySelector("input");
  if (field !== null) {
    setRole(control, "combobox");
    setName(control, words);
    setName(field, words);
  } else if (control instanceof HTMLButtonElement) setName(control, words);
  else {
    const opener = control.matches("[data-slot]") ? control : control.querySelector("[data-slot]");
    if (!(opener instanceof HTMLElement)) return;
    setRole(opener, "button");
    opener.tabIndex = 0;
    setName(opener, words);
  }
}

function setRole(control: Element, role: string): void {
  if (control.getAttribute("role") !== role) control.setAttribute("role", role);
}

function setName(control: Element, words: string | undefined): void {
  if (words !== undefined && control.getAttribute("aria-label") !== words) {
    control.setAttribute("aria-label", words);
  }
}

/** The words that the grid shows when one points at a command of its toolbar, by the command's id. */
function toolbarWords({ injector }: Engine): ReadonlyMap<string, string> {
  const locale = injector.get(LocaleService);
  const menu = injector.get(IMenuManagerService);
  const items = menu.getFlatMenuByPositionKey(MenuManagerPosition.RIBBON);
  return new Map(
    items.flatMap(({ item }) => {
      const key = item?.tooltip ?? item?.title;
      return item === undefined || key === undefined ? [] : [[item.id, locale.t(key)] as const];
    }),
  );
}
