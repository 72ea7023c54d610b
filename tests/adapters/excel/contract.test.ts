import { describeWorkbook } from "../../workbook/contract";
import { excelRig } from "./excelRig";

describeWorkbook("Excel at the floor", (setup) => excelRig(setup, "1.9"));
describeWorkbook("Excel with all that the library knows", (setup) => excelRig(setup, "1.15"));
