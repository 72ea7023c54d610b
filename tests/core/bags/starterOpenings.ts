/** Openings of every starter type that can be counted, at sizes where their counts change. */
import { packJob, type PackedOpening } from "../../../src/core/bags/bags";
import { starterTypes } from "../../../src/core/kitbook/starter/starterKitBook";
import { estimateRows, scheduleRow, type OpeningWords } from "../takeoff/notation";

const doors = ["2' x 7' on 7'", "5' x 7' on 8'", "8' x 8' on 9'", "16' x 10' on 12'"];
const hinged = ["2' x 7' on 8'", "4' x 8' on 8'", "5' x 10' on 12'"];

/** Sizes by opening type. */
export const starterSizes: Readonly<Record<string, readonly string[]>> = {
  "Sliding door": doors,
  "Bi-parting sliding door": ["5' x 7' on 8'", "12' x 8' on 10'", "16' x 10' on 12'"],
  "Hinged door": hinged,
  "Hinged door pair": ["4' x 7' on 8'", "7' x 8' on 9'", "10' x 10' on 12'"],
  "Service window": ["1' x 1' on 8'", "3' x 3' on 8'", "4' x 3' on 8'", "6' x 5' on 12'"],
  "Fixed transom": ["2' x 6\" on 10'", "8' x 2' on 10'", "20' x 5' on 12'"],
};

/** Every starter type with each of its sizes. */
export const starterCases: readonly (readonly [type: string, sizes: string])[] =
  starterTypes.flatMap((type) =>
    (starterSizes[type] ?? []).map((sizes): readonly [string, string] => [type, sizes]),
  );

/** One opening with its bags. @throws Error when it cannot be counted. */
export function packedOpening(
  type: string,
  sizes: string,
  words: OpeningWords = {},
): PackedOpening {
  const { jobs, findings } = estimateRows([scheduleRow(sizes, { type, ...words })]);
  const opening = jobs[0] === undefined ? undefined : packJob(jobs[0].takeOff).openings[0];
  if (opening === undefined) throw new Error(findings.map(({ message }) => message).join("\n"));
  return opening;
}
