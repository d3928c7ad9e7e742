import { workbookContract } from "./contract.ts";
import { createMemoryWorkbook } from "./memoryWorkbook.ts";

workbookContract("the workbook in memory", (content) => Promise.resolve(createMemoryWorkbook(content)));
