/** Hands a file to the user’s browser. */
export function download(name: string, data: Uint8Array<ArrayBuffer> | string, type: string): void {
  const address = URL.createObjectURL(new Blob([data], { type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken the file over once the click has been handled.
  setTimeout(() => {
    URL.revokeObjectURL(address);
  }, 60_000);
}

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
