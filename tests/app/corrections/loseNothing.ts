/** Edits by chance between take-offs, after each of which nothing that was typed may be gone. */
import { expect } from "@jest/globals";
import { snapshotOf } from "../typedWorkbook";
import { memoryDesk } from "./desk";
import { edit } from "./edits";
import { takeOffAgain } from "./takeOffAgain";
import { chanceOf, newWorld, schedule } from "./world";

const steps = 2_000;

/** Two thousand edits that follow from `seed`: no correction is lost, and none comes back. */
export async function loseNothing(seed: number): Promise<void> {
  const chance = chanceOf(seed);
  const world = newWorld(memoryDesk(snapshotOf(schedule)));
  await takeOffAgain(world, chance);
  for (let step = 0; step < steps; step += 1) {
    if (chance(9) > 0) {
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
}

/** A slow machine may take its time over them. */
export const longest = 600_000;
