/** A bar to scale: its pieces with their marks, the cuts between them, what is left over. */
import { makeStyles } from "@fluentui/react-components";
import { useCallback, useState } from "react";
import type { Bar, SawRules } from "../../core/purchasing/cutting/cutProblem";
import { tokens } from "../parts/tokens";

const height = 26;
/** Pixels that a letter of a mark takes, and what stays free beside it. */
const letterWidth = 6.8;
const padding = 6;
/** What the narrowest pane has for a drawing; what a drawing has where nobody can measure it. */
const narrowest = 250;

const useStyles = makeStyles({
  bar: { display: "block", height: `${height}px` },
  piece: {
    fill: tokens.colorBrandBackground2,
    stroke: tokens.colorBrandForegroundLink,
    "@media (forced-colors: active)": { fill: "Canvas", stroke: "CanvasText" },
  },
  outline: { fill: tokens.colorNeutralBackground1, stroke: tokens.colorNeutralStrokeAccessible },
  kept: {
    fill: tokens.colorNeutralBackground1,
    stroke: tokens.colorNeutralForeground2,
    strokeDasharray: "4 3",
  },
  scrap: { fill: tokens.colorNeutralBackground6 },
  cut: { fill: tokens.colorNeutralForeground1 },
  words: {
    fill: tokens.colorNeutralForeground1,
    fontSize: tokens.fontSizeBase200,
    textAnchor: "middle",
    dominantBaseline: "central",
    "@media (forced-colors: active)": { fill: "CanvasText" },
  },
});

export type BarDrawingProps = {
  readonly bar: Bar;
  /** The longest bar of its plan, which is drawn as wide as there is room. */
  readonly longest: number;
  readonly saw: SawRules;
  /** All that the drawing shows, in words. */
  readonly words: string;
};

export function BarDrawing({ bar, longest, saw, words }: BarDrawingProps) {
  const styles = useStyles();
  const { width, measure } = useWidth();
  const pixels = width * (bar.length / longest);
  const percent = (length: number): string => `${((length / bar.length) * 100).toFixed(3)}%`;
  const fits = (label: string, length: number): boolean =>
    label.length * letterWidth + padding <= (length / bar.length) * pixels;
  const { pieces, end } = placed(bar, saw);
  const left = bar.offcut > 0 ? { at: end, length: bar.offcut } : null;
  const offcutWords = bar.kept ? "keep" : "scrap";
  return (
    <div ref={measure}>
      <svg
        role="img"
        aria-label={words}
        className={styles.bar}
        width={`${((bar.length / longest) * 100).toFixed(3)}%`}
        height={height}
      >
        <rect className={styles.scrap} x="0" y="1" width="100%" height={height - 2} />
        {left === null ? null : (
          <svg x={percent(left.at)} width={percent(left.length)} height={height}>
            <rect
              className={bar.kept ? styles.kept : styles.scrap}
              x="1"
              y="2"
              width="100%"
              height={height - 4}
            />
            {fits(offcutWords, left.length) ? (
              <text className={styles.words} x="50%" y="50%">
                {offcutWords}
              </text>
            ) : null}
          </svg>
        )}
        {pieces.map(({ at, length, mark }) => (
          <svg key={at} x={percent(at)} width={percent(length)} height={height}>
            <rect className={styles.piece} x="0" y="1" width="100%" height={height - 2} />
            {fits(mark, length) ? (
              <text className={styles.words} x="50%" y="50%">
                {mark}
              </text>
            ) : null}
          </svg>
        ))}
        {pieces.map(({ at, length }) => (
          <svg key={at} x={percent(at + length)} width="4" height={height} overflow="visible">
            <rect className={styles.cut} x="-0.75" y="1" width="1.5" height={height - 2} />
          </svg>
        ))}
        <rect
          className={styles.outline}
          fillOpacity="0"
          x="0.5"
          y="0.5"
          width="100%"
          height={height - 1}
        />
      </svg>
    </div>
  );
}

type Placed = { readonly at: number; readonly length: number; readonly mark: string };

/** Where each piece lies from the bar's end, a cut behind each; the trim of a new bar comes last. */
function placed(
  { pieces }: Bar,
  { kerf }: SawRules,
): { readonly pieces: readonly Placed[]; readonly end: number } {
  let end = 0;
  const all = pieces.map(({ length, mark }) => {
    const at = end;
    end += length + kerf;
    return { at, length, mark };
  });
  return { pieces: all, end };
}

/** The width of an element, kept up; the narrowest where the browser cannot tell. */
function useWidth(): {
  readonly width: number;
  readonly measure: (element: HTMLElement | null) => (() => void) | undefined;
} {
  const [width, setWidth] = useState(narrowest);
  const measure = useCallback((element: HTMLElement | null) => {
    if (element === null || typeof ResizeObserver === "undefined") return undefined;
    const observer = new ResizeObserver(([entry]) => {
      if (entry !== undefined) setWidth(entry.contentRect.width);
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { width, measure };
}
