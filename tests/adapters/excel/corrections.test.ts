import { expect, test } from "@jest/globals";
import { edit } from "../../app/corrections/edits";
import { takeOffAgain } from "../../app/corrections/takeOffAgain";
import { chanceOf, newWorld, schedule } from "../../app/corrections/world";
import { excelDesk } from "./excelDesk";

/** Each writing is some twenty requests to the object model, so fewer edits than in memory. */
const steps = 600;

test("no correction is lost in Excel, whatever is edited", async () => {
  const chance = chanceOf(7);
  const world = newWorld(await excelDesk(schedule, "1.9"));
  await takeOffAgain(world, chance);
  for (let step = 0; step < steps; step += 1) {
    if (chance(9) > 0) {
      edit(world, chance);
      continue;
    }
    const wrong = await takeOffAgain(world, chance);
    const log = wrong.length === 0 ? [] : world.log.slice(-60);
    expect({ step, wrong, log }).toEqual({ step, wrong: [], log: [] });
  }
  expect(world.live.size).toBeGreaterThan(5);
}, 240_000);
