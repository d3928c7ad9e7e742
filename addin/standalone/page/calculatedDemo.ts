import { demoWorkbook } from "../../demo/demoWorkbook.ts";
import { calculated } from "../workbooks/calculate.ts";

/** The demo with what its formulas give. The build runs this module and ships only what it gives, see `runAtBuild.mjs`. */
export const calculatedDemo = calculated(demoWorkbook());
