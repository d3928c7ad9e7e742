import { createRoot } from "react-dom/client";
import { createExcelWorkbook } from "../addin/workbook/excel/excelWorkbook.ts";
import { leastApi } from "../addin/workbook/excel/requests.ts";
import { createErrands } from "./shell/errands.ts";
import { connectCommands } from "./excel/commands.ts";
import { excelServices } from "./excel/excelServices.ts";
import { OutsideExcel } from "./shell/OutsideExcel.tsx";
import { Pane } from "./shell/Pane.tsx";

/** How long Excel may take to answer before the page says so, in milliseconds. It goes on waiting. */
const patience = 15_000;

const place = document.getElementById("pane");
if (!place) throw new Error("The page has no place for the pane.");
const root = createRoot(place);

if (typeof Office === "undefined") {
  root.render(<OutsideExcel why="unreachable" />);
} else {
  // At once: Excel may start this page for the sake of a command, without showing it.
  const errands = createErrands();
  connectCommands(errands);
  const late = setTimeout(() => {
    root.render(<OutsideExcel why="no answer" />);
  }, patience);
  void Office.onReady().then(({ host }) => {
    clearTimeout(late);
    if (host !== Office.HostType.Excel) root.render(<OutsideExcel why="browser" />);
    else if (!Office.context.requirements.isSetSupported("ExcelApi", leastApi))
      root.render(<OutsideExcel why="too old" />);
    else root.render(<Pane workbook={createExcelWorkbook()} services={excelServices()} errands={errands} />);
  });
}
