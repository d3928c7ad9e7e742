import { commandIds } from "../taskpane/excel/commandIds.ts";

/** A command that Excel offers: a button, with the icon of its name in `icons/`. */
export interface Command {
  /** Also the beginning of the names of its texts and icons in the XML manifest. */
  readonly id: string;
  /** What `Office.actions.associate` connects; without one the command shows the pane. */
  readonly action?: string;
  readonly icon: "icon" | "check" | "new" | "explain";
  readonly label: string;
  readonly tip: string;
}

/** On the ribbon, in this order. */
export const ribbonCommands: readonly Command[] = [
  {
    id: "Open",
    icon: "icon",
    label: "Measure Book",
    tip: "Open Measure Book beside the sheet: bring measurements in, check them, and put them to use.",
  },
  {
    id: "Check",
    action: commandIds.check,
    icon: "check",
    label: "Check this chart",
    tip: "Look through the measurement chart for readings that cannot be right.",
  },
  {
    id: "New",
    action: commandIds.newChart,
    icon: "new",
    label: "New measurement chart",
    tip: "Add sheets to this workbook to write measurements and patterns into. You are asked for the unit first.",
  },
];

/** In the menu of a cell. */
export const cellCommands: readonly Command[] = [
  {
    id: "Explain",
    action: commandIds.explain,
    icon: "explain",
    label: "Explain this reading or figure",
    tip: "Say what the selected cell of the measurement chart holds, and whether it can be right.",
  },
];

export const commands: readonly Command[] = [...ribbonCommands, ...cellCommands];
