import { beforeAll, describe, expect, test } from "@jest/globals";
import type { CountedFile } from "../../src/app/orders/countFile";
import {
  decidedBy,
  firstChoice,
  jobClashes,
  jobId,
  openDifferences,
  othersFor,
  wantedJobs,
  type OrderChoice,
} from "../../src/pane/order/orderChoice";
import { countedFile, doorOf, orderJobs, wishOf } from "../app/orders/orderFiles";

let files: readonly CountedFile[];
beforeAll(async () => {
  const [dock, yard] = [doorOf("Dock"), doorOf("Yard")];
  files = [
    await countedFile("a.xlsx", { List: [...dock, ...yard.slice(1)] }),
    await countedFile("b.xlsx", { List: doorOf("DOCK ") }),
  ];
});

const jobsOf = (choice: OrderChoice) => {
  const order = orderJobs(files, wishOf({ jobs: wantedJobs(files, choice) }));
  if (!order.ok) throw new Error(order.error);
  return order.value.plan.jobs.map(({ job }) => job);
};

describe("a job of one name in two workbooks", () => {
  test("is a clash, and on no order until it is decided", () => {
    expect(jobClashes(files, firstChoice)).toEqual([{ job: "Dock", files: ["a.xlsx", "b.xlsx"] }]);
    expect(jobsOf(firstChoice)).toEqual(["Yard"]);
  });

  test("is on it once where one of the two is left out", () => {
    const choice = { ...firstChoice, leftOut: new Set([jobId("a.xlsx", "dock")]) };
    expect(jobClashes(files, choice)).toEqual([]);
    expect(jobsOf(choice)).toHaveLength(2);
  });

  test("is on it twice where they are two jobs", () => {
    const choice = { ...firstChoice, twoJobs: new Set(["dock"]) };
    expect(jobsOf(choice).filter((job) => job.includes("a.xlsx"))).toEqual(["Dock (a.xlsx)"]);
    expect(jobsOf(choice)).toHaveLength(3);
  });
});

describe("what workbooks say differently", () => {
  test("is nothing where all have the same", () => {
    expect(openDifferences(files, firstChoice)).toEqual([]);
  });

  test("a workbook that is gone decides nothing any more", () => {
    const choice: OrderChoice = {
      ...firstChoice,
      kitBook: { kind: "of", file: "b.xlsx" },
      items: { kind: "own" },
    };
    expect(decidedBy(choice, files)).toEqual({ kitBooksDecided: true, itemsDecided: true });
    expect(Object.keys(othersFor(choice, files))).toEqual(["kitBook"]);
    const left = files.slice(0, 1);
    expect(decidedBy(choice, left)).toEqual({ kitBooksDecided: false, itemsDecided: true });
    expect(othersFor(choice, left)).toEqual({});
  });
});
