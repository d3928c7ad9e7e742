// Served in place of Office.js: an Excel with the demo open.
import { demoWorkbook } from "../../../addin/demo/demoWorkbook.ts";
import { standInForOffice } from "./standIn.ts";

standInForOffice(demoWorkbook());
