/** A line above the pane that says what a ribbon command came to, until it is closed. */

export type Notices = {
  /** Where the pane goes. */
  readonly pane: HTMLElement;
  /** Shows `text`, in place of what was said before. */
  readonly say: (text: string) => void;
};

/** Fills `page`, which is empty. */
export function buildNotices(page: HTMLElement): Notices {
  const notice = document.createElement("div");
  notice.className = "notice";
  notice.hidden = true;
  const words = document.createElement("p");
  // Announced by screen readers when it changes.
  words.setAttribute("role", "status");
  const close = document.createElement("button");
  close.type = "button";
  close.textContent = "Close";
  close.setAttribute("aria-label", "Close this message");
  close.addEventListener("click", () => {
    notice.hidden = true;
    words.textContent = "";
  });
  notice.append(words, close);
  const pane = document.createElement("div");
  pane.className = "pane";
  page.replaceChildren(notice, pane);
  return {
    pane,
    say: (text) => {
      notice.hidden = false;
      words.textContent = text;
    },
  };
}
