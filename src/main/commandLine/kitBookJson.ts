/** What the kit book's checks say as JSON objects, for other programs. Lengths are inches. */
import { cellText, placeName } from "../../core/base/cell";
import { findingCell, type Finding } from "../../core/base/finding";
import type { BoundaryTable } from "../../core/bookcheck/boundaries";
import { boundaryLines } from "../../core/bookcheck/boundaryLines";
import type { RowChange } from "../../core/bookcheck/compareBooks";
import type { TrialChange } from "../../core/bookcheck/compareTrials";
import type { Trial } from "../../core/bookcheck/trial";
import type { Field } from "../../core/kitbook/fields";
import type { RowSource } from "../../core/kitbook/kitBook";
import type { KitBookCheck } from "../../app/kitbook/checkKitBook";

export const findingJson = (finding: Finding) => ({
  level: finding.level,
  code: finding.code,
  cell: findingCell(finding),
  found: finding.found,
  message: finding.message,
});

const rowJson = ({ section, number, place }: RowSource) => ({
  section,
  row: number,
  cell: place === null ? "" : placeName(place),
});

export const checkJson = (
  { findings, coverage, connections }: KitBookCheck,
  complete: boolean,
) => ({
  complete,
  findings: findings.map(findingJson),
  coverage: {
    gaps: coverage.gaps.map(({ type, chart, down, across, stoppedBy }) => ({
      type,
      chart,
      down,
      across,
      stoppedBy,
    })),
    itemsNotInTable: coverage.items.notInTable.map(({ code }) => code),
    itemsWithoutCost: coverage.items.withoutCost.map(({ code }) => code),
    itemsNeverNamed: coverage.items.neverNamed.map(({ code }) => code),
    idleRows: coverage.idle.map(({ source, what, isProven }) => ({
      ...rowJson(source),
      what,
      isProven,
    })),
  },
  bolts: connections.connections.map(({ source, items, types, joined, faults }) => ({
    ...rowJson(source),
    items,
    types,
    joined,
    faults: faults.map(({ code }) => code),
  })),
});

export const boundariesJson = ({ boundaries, isProven }: BoundaryTable, { name }: Field) => ({
  field: name,
  isProven,
  boundaries: boundaries.map((boundary) => ({
    value: Number(boundary.value.toPrecision(12)),
    goesWith: boundary.goesWith,
    changes: boundaryLines(boundary).map(({ kind, what, below, at, above }) => ({
      kind,
      what,
      below,
      at,
      above,
    })),
    rows: boundary.rows.map(rowJson),
  })),
});

export const trialJson = ({ sizes, parts, limits, broken, isCounted }: Trial) => ({
  isCounted,
  sizes: sizes.map(({ source, name, text, worked }) => ({
    ...rowJson(source),
    name,
    value: text,
    ...worked,
  })),
  parts: parts.map(({ source, deed, bag, item, itemTyped, size, each, quantity, when, fault }) => ({
    ...rowJson(source),
    does: deed,
    bag,
    item: item ?? itemTyped,
    size,
    each,
    quantity,
    when,
    fault,
  })),
  limits: limits.map(({ source, deed, level, when, message }) => ({
    ...rowJson(source),
    does: deed,
    level,
    when,
    message,
  })),
  broken: broken.map(({ source, finding }) => ({ ...rowJson(source), message: finding.message })),
});

export const trialChangesJson = (changes: readonly TrialChange[]) =>
  changes.map(({ source, what, one, other }) => ({ ...rowJson(source), what, one, other }));

/** `number` counts from 1, as `--take` does. */
export const changesJson = (changes: readonly RowChange[]) =>
  changes.map(({ section, kind, what, before, after, cells }, index) => ({
    number: index + 1,
    section,
    kind,
    what,
    before,
    after,
    cells: cells.map((cell) => ({
      column: cell.column,
      before: cellText(cell.before.value),
      after: cellText(cell.after.value),
    })),
  }));
