/** The kit book that the workbook counts by, with its findings; the same object while nothing of it changes. */
import { useMemo } from "react";
import type { Inputs } from "../../app/reading/inputs";
import { kitBookAtHand, type KitBookAtHand } from "../../app/kitbook/kitBookAtHand";
import { headingsOf } from "../../core/estimate/estimate";
import { usePane } from "../state/paneContext";

export function useBookAtHand(inputs: Inputs): KitBookAtHand {
  const { settings } = usePane().state;
  const { kitBook, items } = inputs;
  const headings = headingsOf(inputs.schedules).join("\n");
  const { unit, lengths, fraction, currency } = settings;
  return useMemo(
    () => kitBookAtHand(inputs, settings),
    // A schedule that changes, or a setting of another kind, is no other book.
    [kitBook, items, headings, unit, lengths, fraction, currency],
  );
}
