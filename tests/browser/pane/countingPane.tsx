import { createRoot } from "react-dom/client";
import type { Workbook } from "../../../addin/workbook/port.ts";
import { Pane } from "../../../taskpane/shell/Pane.tsx";
import { createMemoryWorkbook } from "../../workbook/memoryWorkbook.ts";

declare global {
  interface Window {
    /** What the pane has read from the workbook, in turn. */
    reads: string[];
    /** Makes the next reading of a table wait until what this gives is called. */
    holdNextReading: () => () => void;
    /** What a user types into a cell of the chart. */
    typeReading: (row: number, column: number, text: string) => Promise<void>;
  }
}

const measures = ["Height", "Head", "Neck", "Bust", "Waist", "Hip", "Arm length", "Wrist", "Inside leg"];
const shares = [1, 0.41, 0.17, 0.455, 0.335, 0.485, 0.32, 0.085, 0.465];
const figures = Number(new URLSearchParams(window.location.search).get("figures"));

/** A chart without slips: figures of one build, from small to large. */
const cells = [
  ["Figure", ...measures.map((measure) => `${measure} (mm)`)],
  ...Array.from({ length: figures }, (_, i) => [
    `Figure ${String(i + 1)}`,
    ...shares.map((share) => Math.round((280 + (240 * i) / figures) * share * 2) / 2),
  ]),
].map((row) => row.map((value) => ({ value })));

const memory = createMemoryWorkbook({
  sheets: [
    {
      name: "Figures",
      cells,
      tables: [{ name: "Figures", row: 0, column: 0, rows: cells.length, columns: measures.length + 1 }],
    },
  ],
});
window.reads = [];
function counted<A extends unknown[], R>(what: string, read: (...args: A) => R): (...args: A) => R {
  return (...args) => {
    window.reads.push([what, ...args].join(" "));
    return read(...args);
  };
}
const held: Promise<void>[] = [];
window.holdNextReading = () => {
  let go = (): void => undefined;
  held.push(new Promise((resolve) => (go = resolve)));
  return go;
};
const workbook: Workbook = {
  ...memory,
  sheets: counted("sheets", memory.sheets),
  tables: counted("tables", memory.tables),
  readTable: counted("table", async (name: string) => {
    const data = await memory.readTable(name);
    await held.shift();
    return data;
  }),
};
window.typeReading = (row, column, text) => memory.typeInto({ sheet: "Figures", row, column }, text);

const place = document.getElementById("pane");
if (place) createRoot(place).render(<Pane workbook={workbook} section="check" />);
