/** Everything that can be said of a kit book without a schedule: its errors, its bolts, what it leaves open. */
import type { Finding } from "../../core/base/finding";
import { between, type Steps } from "../../core/base/steps";
import { connectionsIn, type BookConnections } from "../../core/bookcheck/connections";
import { findingsOfConnections } from "../../core/bookcheck/connectionFindings";
import { coverInSteps, type Coverage } from "../../core/bookcheck/coverage";
import { findingsOfCoverage } from "../../core/bookcheck/coverageFindings";
import type { KitBookAtHand } from "./kitBookAtHand";

export type KitBookCheck = {
  /** Rows that do not work, and why. */
  readonly errors: readonly Finding[];
  readonly coverage: Coverage;
  readonly connections: BookConnections;
  /** Those of errors, then of bolts, then of coverage. */
  readonly findings: readonly Finding[];
};

/** Checks the book, an opening type a step. */
export function* checkKitBook(hand: KitBookAtHand): Steps<KitBookCheck> {
  const { book, items, show, findings } = hand;
  const connections = connectionsIn(book, items);
  const coverage = yield* between(0.1, 1, coverInSteps({ book, items, show }));
  return {
    errors: findings,
    coverage,
    connections,
    findings: [
      ...findings,
      ...findingsOfConnections(connections),
      ...findingsOfCoverage(coverage, show),
    ],
  };
}
