/** Ten thousand edits, with those of `moreEditing.test.ts`: two files, for two cores. */
import { test } from "@jest/globals";
import { longest, loseNothing } from "./loseNothing";

test.each([1, 2, 3])("two thousand edits lose no correction (seed %i)", loseNothing, longest);
