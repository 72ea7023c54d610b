/** The findings sheet: what is wrong or doubtful in what was typed, the worst first. */
import { findingCell, findingLevels, type Finding } from "../../core/base/finding";
import type { Drawing } from "../../workbook/drawing";
import { caution } from "../caution";
import { headingRow, row, text, wordsRow } from "../cells";
import { fittedRow, titleRow } from "../fittedRow";
import { printSetup } from "../printSetup";

const headings = [
  { words: "Level", width: 16 },
  { words: "Cell", width: 20 },
  { words: "Job", width: 27 },
  { words: "Mark", width: 14 },
  { words: "Found", width: 28 },
  { words: "What it means and what to do", width: 100 },
] as const;

const levelWords = {
  stop: "Stop: not counted",
  warn: "Warning",
  note: "Note",
} as const;

const widths: readonly number[] = headings.map(({ width }) => width);

/** Stops, then warnings, then notes; within a level in the order given. */
export function findingsSheet(findings: readonly Finding[]): Drawing {
  const width = headings.length;
  const sorted = findingLevels.flatMap((level) =>
    findings.filter((finding) => finding.level === level),
  );
  const counts = findingLevels.map(
    (level) => findings.filter((found) => found.level === level).length,
  );
  const [stops = 0, warnings = 0, notes = 0] = counts;
  const rows = [
    titleRow("Findings", widths),
    wordsRow(
      stops > 0
        ? `NOT COMPLETE: ${stops} stops, ${warnings} warnings, ${notes} notes. What has a stop is not counted.`
        : `Everything was counted. ${warnings} warnings, ${notes} notes.`,
      stops > 0 ? "stop" : "subtitle",
      width,
    ),
    headingRow(headings),
    ...sorted.map((finding) =>
      fittedRow(
        row(
          text(levelWords[finding.level], { look: finding.level }),
          text(findingCell(finding)),
          text(finding.job ?? ""),
          text(finding.mark ?? ""),
          text(finding.found),
          text(finding.message),
        ),
        widths,
      ),
    ),
  ];
  return {
    name: "Findings",
    mark: { kind: "findings", subject: "" },
    columnWidths: widths,
    rows,
    frozenRows: 3,
    frozenColumns: 0,
    tables: [],
    choices: [],
    print: printSetup({
      orientation: "landscape",
      headingRow: 2,
      subject: "",
      title: "Findings",
      caution,
    }),
  };
}
