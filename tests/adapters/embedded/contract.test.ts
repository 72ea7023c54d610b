import { afterAll } from "@jest/globals";
import { startEngine } from "../../../src/adapters/embedded/engine";
import { describeWorkbook } from "../../workbook/contract";
import { gridRig } from "./gridRig";

const engine = startEngine();
afterAll(() => engine.univer.dispose());

describeWorkbook("embedded", (setup) => Promise.resolve(gridRig(engine, setup)));
