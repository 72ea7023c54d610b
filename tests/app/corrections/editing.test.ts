import { expect, test } from "@jest/globals";
import { snapshotOf } from "../typedWorkbook";
import { memoryDesk } from "./desk";
import { edit } from "./edits";
import { takeOffAgain } from "./takeOffAgain";
import { chanceOf, newWorld, schedule } from "./world";

const steps = 2_000;

test.each([1, 2, 3, 4, 5])(
  "no correction is lost in two thousand edits, and none comes back (seed %i)",
  async (seed) => {
    const chance = chanceOf(seed);
    const world = newWorld(memoryDesk(snapshotOf(schedule)));
    await takeOffAgain(world, chance);
    for (let step = 0; step < steps; step += 1) {
      if (chance(5) > 0) {
        edit(world, chance);
        continue;
      }
      const wrong = await takeOffAgain(world, chance);
      // The edits that led there are what helps to find the fault.
      const log = wrong.length === 0 ? [] : world.log.slice(-60);
      expect({ step, wrong, log }).toEqual({ step, wrong: [], log: [] });
    }
    expect(world.tokens).toBeGreaterThan(steps / 8);
    expect(world.live.size).toBeGreaterThan(10);
  },
  600_000,
);
