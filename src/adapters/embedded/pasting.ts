/**
 * A block that is pasted as plain text lands cell by cell as it was copied. The grid reads such a text
 * as HTML: it moves a row whose first cell is blank to the left, takes `<4'>` for a tag, and leaves a
 * blank at the end of each line that ends as lines do in Windows.
 */
import { ISheetClipboardService } from "@univerjs/sheets-ui";
import type { Engine } from "./engine";
import { tableOfText } from "./pastedText";

const plain = "text/plain";
const html = "text/html";

/** Hands the grid such blocks as tables that say the same. Once an engine. */
export function keepPastedText({ injector }: Engine): void {
  const clipboard = injector.get(ISheetClipboardService);
  const paste = clipboard.paste.bind(clipboard);
  const pasteByKey = clipboard.legacyPaste.bind(clipboard);
  clipboard.legacyPaste = (table, text, files) =>
    pasteByKey(table === undefined || table === "" ? tableOfText(text ?? "") : table, text, files);
  clipboard.paste = async (item, kind) => {
    const isPlain = item.types.includes(plain) && !item.types.includes(html);
    const table = isPlain ? tableOfText(await (await item.getType(plain)).text()) : "";
    if (table === "") return paste(item, kind);
    return paste(new ClipboardItem({ [html]: new Blob([table], { type: html }) }), kind);
  };
}
