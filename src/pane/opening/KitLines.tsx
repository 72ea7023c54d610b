/** What an opening is made of, by bag: pointing at a line lights its places in the picture. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import type { RefObject } from "react";
import { itemKey } from "../../core/pricing/item";
import { useSharedStyles } from "../parts/parts.styles";
import { countText } from "../parts/quantities";
import { tokens } from "../parts/tokens";
import { usePane } from "../state/paneContext";
import type { KitBag, KitLine, KitWords } from "./kitList";
import { isSame, type Pointing } from "./usePointing";

const useStyles = makeStyles({
  lines: { marginTop: tokens.spacingVerticalXS, overflow: "hidden" },
  item: { ":not(:first-child)": { borderTop: `1px solid ${tokens.colorNeutralStroke3}` } },
  line: {
    display: "grid",
    gridTemplateColumns: "1fr auto",
    columnGap: tokens.spacingHorizontalM,
    padding: `${tokens.spacingVerticalSNudge} ${tokens.spacingHorizontalM}`,
    borderLeft: "4px solid transparent",
    // The picture stays above the list, and must not hide what has the focus.
    scrollMarginTop: "345px",
    scrollMarginBottom: "44px",
    "@media (min-width: 600px)": { scrollMarginTop: "390px" },
    "@media (max-height: 860px)": { scrollMarginTop: "0px" },
  },
  lit: {
    borderLeftColor: tokens.colorBrandStroke1,
    backgroundColor: tokens.colorNeutralBackground1Selected,
    "@media (forced-colors: active)": { borderLeftColor: "Highlight" },
  },
  words: { overflowWrap: "anywhere" },
});

export type KitLinesProps = {
  readonly bags: readonly KitBag[];
  readonly pointing: Pointing;
  readonly words: KitWords;
  /** For the focus to come here from the picture. */
  readonly firstLine: RefObject<HTMLButtonElement | null>;
};

export function KitLines({ bags, firstLine, ...common }: KitLinesProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  return (
    <>
      {bags.map(({ words: title, lines }, bag) => (
        <section key={title}>
          <h3 className={shared.subheading}>{title}</h3>
          <ul className={mergeClasses(shared.list, shared.card, styles.lines)}>
            {lines.map((line, index) => (
              <li key={line.key} className={styles.item}>
                <Line
                  line={line}
                  {...common}
                  buttonRef={bag === 0 && index === 0 ? firstLine : null}
                />
              </li>
            ))}
          </ul>
        </section>
      ))}
    </>
  );
}

type LineProps = Pick<KitLinesProps, "pointing" | "words"> & {
  readonly line: KitLine;
  readonly buttonRef: RefObject<HTMLButtonElement | null> | null;
};

function Line({ line, pointing, words, buttonRef }: LineProps) {
  const { items } = usePane().state.takeOff?.estimate ?? {};
  const styles = useStyles();
  const shared = useSharedStyles();
  const own = { kind: "line", key: line.key } as const;
  const { lit, kept } = pointing;
  const here = lit?.kind === "place" ? (line.places.get(lit.key) ?? 0) : 0;
  const isLit = here > 0 || isSame(lit, own);
  return (
    <button
      type="button"
      ref={buttonRef}
      aria-pressed={isSame(kept, own)}
      className={mergeClasses(shared.plainButton, styles.line, isLit && styles.lit)}
      onPointerMove={(event) => {
        if (event.pointerType === "mouse") pointing.point(own);
      }}
      onPointerLeave={() => pointing.point(null)}
      onFocus={() => pointing.focus(own)}
      onBlur={() => pointing.focus(null)}
      onClick={() => pointing.press(own)}
    >
      <span className={styles.words}>
        {items?.get(itemKey(line.item))?.description ?? line.item}
      </span>
      <span className={mergeClasses(shared.number, shared.strong)}>
        {countText(line.pieces)} pcs
      </span>
      <span className={mergeClasses(shared.small, styles.words)}>
        {[words.size(line), line.item].filter((each) => each !== "").join(" · ")}
      </span>
      <span className={mergeClasses(shared.small, shared.number)}>
        {here > 0 ? `${countText(here)} here` : ""}
      </span>
      <span className={shared.hidden}>, at {words.places(line)}</span>
    </button>
  );
}
