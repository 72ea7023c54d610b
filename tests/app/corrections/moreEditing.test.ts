/** Ten thousand edits, with those of `editing.test.ts`: two files, for two cores. */
import { test } from "@jest/globals";
import { longest, loseNothing } from "./loseNothing";

test.each([4, 5])("two thousand edits lose no correction (seed %i)", loseNothing, longest);
