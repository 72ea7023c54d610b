/** The check of hanging loads by what a rates sheet says of them, job by job. */
import type { OverloadStop } from "../../core/estimate/overloadStop";
import { stopOverloaded } from "../../core/estimate/stopOverloaded";
import { loadRules } from "../../core/pricing/loads/openingLoads";
import { rateReader, type RateTable } from "../../core/pricing/rates/rates";
import { currencyIn, measureStyleIn, type Settings } from "../settings";

/** `undefined` without a rates sheet: the starter has no capacities. */
export type EnteredLoads = (
  rates: RateTable | null,
  settings: Settings,
) => OverloadStop | undefined;

export const enteredLoads: EnteredLoads = (rates, settings) =>
  rates === null
    ? undefined
    : (taken, items) =>
        stopOverloaded(taken, items, (job) =>
          loadRules(rateReader(rates, job, currencyIn(settings)), measureStyleIn(settings)),
        );
