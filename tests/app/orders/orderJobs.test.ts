import { describe, expect, test } from "@jest/globals";
import type { JobsOrder } from "../../../src/app/orders/orderJobs";
import { starterItems } from "../../../src/core/kitbook/starter/items";
import { countedDemo, countedFile, doorOf, orderJobs, orderOf, wishOf } from "./orderFiles";

const codes = ({ findings }: JobsOrder): readonly string[] =>
  findings.map(({ finding }) => finding.code);

describe("one order for jobs of several workbooks", () => {
  test("needs what all of them count, less the shelf", async () => {
    const files = [await countedDemo(), await countedFile("b.xlsx", { List: doorOf("Dock") })];
    const jobs = ["Dock", "Tool crib, Alder plant"];
    const { plan } = orderOf(files, { jobs });
    expect(plan.jobs.map(({ job }) => job)).toEqual(jobs);
    const trolley = plan.lines.find(({ item }) => item === "TROLLEY");
    const counted = files
      .flatMap(({ takeOff }) => takeOff.estimate.jobs)
      .filter(({ job }) => jobs.includes(job))
      .flatMap(({ material }) => material.lines)
      .filter(({ line }) => line.item === "TROLLEY")
      .reduce((sum, { toOrder }) => sum + toOrder, 0);
    // The demo's shelf has three, and two are on order.
    expect(trolley?.buy).toBe(counted - 5);
  });

  test("shares every cent of it over the jobs and stock", async () => {
    const { plan } = orderOf([await countedDemo()]);
    const sum = plan.shares.reduce((all, { cost }) => all + cost, 0);
    expect(sum).toBe(plan.total);
    expect(plan.total).toBeGreaterThan(0);
  });

  test("does not depend on the order in which jobs are named", async () => {
    const files = [await countedDemo(), await countedFile("b.xlsx", { List: doorOf("Dock") })];
    const one = orderOf(files, { jobs: ["Dock", "Tool crib, Alder plant"] });
    const other = orderOf(files, { jobs: ["Tool crib, Alder plant", "Dock"] });
    expect(other.plan).toEqual(one.plan);
  });
});

describe("what two workbooks say differently", () => {
  test("a job of one name in both is left out until one is chosen", async () => {
    const files = [
      await countedFile("a.xlsx", { List: doorOf("Dock") }),
      await countedFile("b.xlsx", { List: doorOf("dock") }),
    ];
    const unsaid = orderOf(files);
    expect(unsaid.complete).toBe(false);
    expect(codes(unsaid)).toContain("job-in-two-files");
    expect(unsaid.plan.jobs).toEqual([]);
    const said = orderOf(files, { jobs: ["b.xlsx:dock"] });
    expect(codes(said)).not.toContain("job-in-two-files");
    expect(said.plan.jobs.map(({ job }) => job)).toEqual(["dock"]);
    const both = orderOf(files, { jobs: ["a.xlsx:Dock", "b.xlsx:dock"] });
    expect(both.plan.jobs.map(({ job }) => job)).toEqual(["Dock (a.xlsx)", "dock (b.xlsx)"]);
  });

  test("an item that is another thing in the second workbook stops, until it is decided", async () => {
    const items = [
      ["Code", "Description", "Unit", "Unit cost"],
      ...starterItems.map(({ code, description, unit, unitCost }) => [
        code.value,
        code.value === "TROLLEY" ? "Trolley, two wheels" : description.value,
        unit.value,
        unitCost.value,
      ]),
    ];
    const files = [
      await countedFile("a.xlsx", { List: doorOf("Dock") }),
      await countedFile("b.xlsx", { List: doorOf("Yard"), Items: items }),
    ];
    const differing = orderOf(files).findings.filter(
      ({ finding }) => finding.code === "items-differ",
    );
    expect(differing.map(({ finding }) => finding.found)).toEqual(["Trolley, two wheels (each)"]);
    expect(codes(orderOf(files, { itemsDecided: true }))).not.toContain("items-differ");
  });

  test("a job that is nowhere is an error that names those there are", async () => {
    const files = [await countedFile("a.xlsx", { List: doorOf("Dock") })];
    const order = orderJobs(files, wishOf({ jobs: ["Pier"] }));
    expect(order).toEqual({ ok: false, error: expect.stringContaining("a.xlsx:Dock") });
  });
});

test("with no offers nothing is ordered, and it says so", async () => {
  const order = orderOf([await countedFile("a.xlsx", { List: doorOf("Dock") })]);
  expect(order.plan.total).toBe(0);
  expect(codes(order)).toContain("no-offers");
  expect(codes(order)).toContain("nobody-sells");
  expect(order.complete).toBe(false);
});
