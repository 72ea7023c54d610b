/** What a rates sheet says of hanging loads, job by job. */
import type { LoadRulesOf } from "../../core/estimate/stopOverloaded";
import { loadRules } from "../../core/pricing/loads/openingLoads";
import { rateReader, type RateTable } from "../../core/pricing/rates/rates";
import { currencyIn, type Settings } from "../settings";

/** `undefined` without a rates sheet: the starter has no capacities. */
export const enteredLoads = (
  rates: RateTable | null,
  settings: Settings,
): LoadRulesOf | undefined =>
  rates === null ? undefined : (job) => loadRules(rateReader(rates, job, currencyIn(settings)));
