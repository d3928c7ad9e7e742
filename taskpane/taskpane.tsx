import { createRoot } from "react-dom/client";
import { createExcelWorkbook } from "../addin/workbook/excel/excelWorkbook.ts";
import { OutsideExcel } from "./OutsideExcel.tsx";
import { Pane } from "./Pane.tsx";
import type { Appearance } from "./theme.ts";

/** Excel tells whether its own theme is dark; older versions tell only the colour behind the pane. */
function excelAppearance(): Appearance | undefined {
  const theme: Partial<Office.OfficeTheme> | undefined = Office.context.officeTheme;
  if (theme?.isDarkTheme !== undefined) return theme.isDarkTheme ? "dark" : "light";
  const ground = /^#?([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(theme?.bodyBackgroundColor ?? "");
  if (!ground) return undefined;
  const brightness = ground.slice(1).reduce((sum, part) => sum + parseInt(part, 16), 0) / 3;
  return brightness < 128 ? "dark" : "light";
}

const place = document.getElementById("pane");
if (!place) throw new Error("The page has no place for the pane.");
const root = createRoot(place);

if (typeof Office === "undefined") {
  root.render(<OutsideExcel />);
} else {
  void Office.onReady().then(({ host }) => {
    if (host === Office.HostType.Excel) {
      root.render(<Pane workbook={createExcelWorkbook()} appearance={excelAppearance()} />);
    } else {
      root.render(<OutsideExcel />);
    }
  });
}
