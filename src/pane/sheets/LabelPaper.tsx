/** The paper of the bag labels: how many across and down, and its margins; kept in the workbook. */
import { Field, Input, makeStyles, Select } from "@fluentui/react-components";
import { useState } from "react";
import { readLabelLength, writeLabelLength } from "../../app/writing/labelLength";
import { labelGridFault, labelSize, type LabelGrid } from "../../sheets/crew/labelGrid";
import { papers, type Paper } from "../../workbook/drawing";
import type { LengthUnit } from "../../core/lengths/length";
import { Disclosure } from "../parts/Disclosure";
import { Notice } from "../parts/Notice";
import { useSharedStyles } from "../parts/parts.styles";
import { tokens } from "../parts/tokens";
import { usePane } from "../state/paneContext";

const useStyles = makeStyles({
  fields: {
    display: "grid",
    gridTemplateColumns: "repeat(2, minmax(0, 1fr))",
    gap: tokens.spacingHorizontalS,
    padding: `0 ${tokens.spacingHorizontalM} ${tokens.spacingVerticalM}`,
  },
  wide: { gridColumn: "1 / span 2" },
  input: { minWidth: 0, width: "100%" },
});

const paperWords: Readonly<Record<Paper, string>> = { letter: "Letter", a4: "A4" };

/** What is typed, until it is a grid that labels can be made on. */
type Typed = Readonly<Record<(typeof fields)[number]["key"], string>> & { readonly paper: Paper };

const fields = [
  { key: "columns", name: "Labels across", isCount: true },
  { key: "rows", name: "Labels down", isCount: true },
  { key: "top", name: "Margin above", isCount: false },
  { key: "bottom", name: "Margin below", isCount: false },
  { key: "left", name: "Margin left", isCount: false },
  { key: "right", name: "Margin right", isCount: false },
  { key: "gapAcross", name: "Gap across", isCount: false },
  { key: "gapDown", name: "Gap down", isCount: false },
] as const;

export function LabelPaper() {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { state, change } = usePane();
  const { labels, unit } = state.settings;
  const [typed, setTyped] = useState<Typed>(() => typedOf(labels, unit));
  const read = gridOf(typed, unit);
  const set = (changed: Partial<Typed>): void => {
    const next = { ...typed, ...changed };
    setTyped(next);
    const grid = gridOf(next, unit);
    if (typeof grid !== "string") change({ labels: grid });
  };
  return (
    <div className={shared.card}>
      <Disclosure
        isHeading
        startsOpen={typeof read === "string"}
        label={
          <span className={shared.subheading}>
            Label paper <span className={shared.small}>{gridWords(labels, unit)}</span>
          </span>
        }
      >
        {() => (
          <div className={styles.fields}>
            <Field label="Paper" className={styles.wide}>
              <Select
                value={typed.paper}
                onChange={(_, { value }) => {
                  const paper = papers.find((each) => each === value);
                  if (paper !== undefined) set({ paper });
                }}
              >
                {papers.map((paper) => (
                  <option key={paper} value={paper}>
                    {paperWords[paper]}
                  </option>
                ))}
              </Select>
            </Field>
            {fields.map(({ key, name, isCount }) => (
              <Field
                key={key}
                label={name}
                validationState={isWrong(typed[key], isCount, unit) ? "error" : "none"}
              >
                <Input
                  className={styles.input}
                  input={{ className: styles.input }}
                  inputMode={isCount ? "numeric" : "text"}
                  value={typed[key]}
                  onChange={(_, { value }) => set({ [key]: value })}
                />
              </Field>
            ))}
            {typeof read === "string" ? (
              <div className={styles.wide}>
                <Notice level="stop">{read} The paper stays as it was until then.</Notice>
              </div>
            ) : null}
          </div>
        )}
      </Disclosure>
    </div>
  );
}

function typedOf(
  { paper, columns, rows, margins, gapAcross, gapDown }: LabelGrid,
  unit: LengthUnit,
): Typed {
  const text = (length: number): string => writeLabelLength(length, unit);
  return {
    paper,
    columns: String(columns),
    rows: String(rows),
    top: text(margins.top),
    bottom: text(margins.bottom),
    left: text(margins.left),
    right: text(margins.right),
    gapAcross: text(gapAcross),
    gapDown: text(gapDown),
  };
}

const isWrong = (text: string, isCount: boolean, unit: LengthUnit): boolean =>
  isCount ? !/^\s*\d+\s*$/.test(text) : readLabelLength(text, unit) === null;

/** The grid that is typed, or why no labels can be made on it. */
function gridOf(typed: Typed, unit: LengthUnit): LabelGrid | string {
  const wrong = fields.find(({ key, isCount }) => isWrong(typed[key], isCount, unit));
  if (wrong !== undefined) {
    return wrong.isCount
      ? `${wrong.name}: type a whole number.`
      : `${wrong.name}: type a length, such as ${unit === "mm" ? "12 mm" : "1/2"}.`;
  }
  const length = (text: string): number => readLabelLength(text, unit) ?? 0;
  const grid: LabelGrid = {
    paper: typed.paper,
    columns: Number(typed.columns),
    rows: Number(typed.rows),
    margins: {
      top: length(typed.top),
      bottom: length(typed.bottom),
      left: length(typed.left),
      right: length(typed.right),
    },
    gapAcross: length(typed.gapAcross),
    gapDown: length(typed.gapDown),
  };
  return labelGridFault(grid) ?? grid;
}

/** `Letter, 2 x 5, each 3.75" x 2"`. */
function gridWords(grid: LabelGrid, unit: LengthUnit): string {
  const { width, height } = labelSize(grid);
  const text = (length: number): string => writeLabelLength(Math.round(length * 100) / 100, unit);
  return `${paperWords[grid.paper]}, ${grid.columns} × ${grid.rows}, each ${text(width)} × ${text(height)}`;
}
