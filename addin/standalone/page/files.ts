/** Asks the user for a workbook file; `undefined` when none was chosen. */
export function chooseWorkbook(): Promise<File | undefined> {
  return new Promise((resolve) => {
    const input = document.createElement("input");
    input.type = "file";
    input.accept = ".xlsx,application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
    input.addEventListener("change", () => {
      resolve(input.files?.[0]);
    });
    input.addEventListener("cancel", () => {
      resolve(undefined);
    });
    input.click();
  });
}

export const xlsxType = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
