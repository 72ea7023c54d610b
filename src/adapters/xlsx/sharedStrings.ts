/** The texts that cells share. */
import { partText, type Parts } from "./parts";
import { readEscapes, scanXml } from "./xml";

/** Each text by its number; the pieces of rich text are joined, and reading aids are left out. */
export function readSharedStrings(parts: Parts, path: string): readonly string[] {
  const source = partText(parts, path);
  if (source === null) return [];
  const strings: string[] = [];
  const reader = textReader();
  scanXml(source, {
    open: (name) => {
      if (name === "si") reader.start();
      else reader.open(name);
    },
    close: (name) => {
      if (name === "si") strings.push(reader.text());
      else reader.close(name);
    },
    text: reader.add,
  });
  return strings;
}

/** Gathers the `<t>` of a text, rich or plain, but not those of phonetic readings (`<rPh>`). */
export function textReader(): {
  readonly start: () => void;
  readonly open: (name: string) => void;
  readonly close: (name: string) => void;
  readonly add: (text: string) => void;
  readonly text: () => string;
} {
  let text = "";
  let isText = false;
  let isPhonetic = false;
  return {
    start: () => {
      text = "";
    },
    open: (name) => {
      if (name === "rPh") isPhonetic = true;
      else if (name === "t") isText = !isPhonetic;
    },
    close: (name) => {
      if (name === "rPh") isPhonetic = false;
      else if (name === "t") isText = false;
    },
    add: (more) => {
      if (isText) text += more;
    },
    text: () => readEscapes(text),
  };
}
