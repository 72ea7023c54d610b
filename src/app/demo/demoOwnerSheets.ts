/** The demo's sheets of its owner: terms, ranges, alternates, actuals. All of it is invented. */
import { starterRanges } from "../../core/pricing/chances/ownerRanges";
import {
  actualsSheet,
  alternatesSheet,
  rangesSheet,
  termsSheet,
  type WrittenTerm,
} from "../../sheets/owner/ownerSheets";
import type { Drawing } from "../../workbook/drawing";

const crib = "Tool crib, Alder plant";

const terms: readonly WrittenTerm[] = [
  ["firm", "", "Demo firm (invented), 1 Example Street"],
  ["customer", crib, "Alder plant (invented), attention of the tool room"],
  ["validDays", "", 30],
  ["inclusion", "", "The openings listed above, with their hardware, installed"],
  ["inclusion", crib, "Delivery to gate 2 in one shipment"],
  ["exclusion", "", "The structure that carries the track, and its fastening to the building"],
  ["exclusion", "", "Permits, inspection, wiring"],
  ["note", "", "Openings are made to the sizes listed; changes are priced anew"],
];

export const demoOwnerSheets = (): readonly Drawing[] => [
  termsSheet(terms, "Demo: firms, customers and terms on this sheet are invented."),
  rangesSheet(starterRanges, "Demo: the ranges on this sheet are invented."),
  alternatesSheet(
    [
      ["Spring closer on each sliding door", "option", crib, "material", "Closers", 11, 46.5],
      ["Spring closer on each sliding door", null, crib, "hours", null, 5.5, null],
      ["Floor guides by others", "alternate", null, "item", "BRACKET", -10, null],
      ["Floor guides by others", null, null, "hours", null, -2, null],
      [
        "A-104 at 5 feet, one panel",
        "alternate",
        crib,
        "change",
        "Width",
        null,
        null,
        "5'-0\"",
        "A-104",
      ],
    ],
    "Demo: alternates, counts and prices on this sheet are invented.",
  ),
  actualsSheet(
    "Actuals",
    [
      [crib, "cost", "Freight", 655, null],
      [crib, "cost", "Material: Fasteners", 118.4, null],
      [crib, "hours", "Leaf", 15.5, null],
      [crib, "hours", "Trolleys", 3.4, null],
      [crib, "pieces", "HN 1/4", 380, null],
    ],
    "Demo: what this job cost and took is invented.",
  ),
];
