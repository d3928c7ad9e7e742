import { readChart } from "../../../addin/chart/readChart.ts";
import type { TwinChoices } from "../../../addin/chart/import/figures.ts";
import { survey } from "../../../addin/chart/import/survey.ts";
import type { Edit, Workbook } from "../../../addin/workbook/port.ts";
import { inSteps } from "../../../taskpane/import/inSteps.ts";
import { planEdits } from "../../../taskpane/import/planEdits.ts";
import { prepare } from "../../../taskpane/import/prepare.ts";
import type { ImportSource } from "../../../taskpane/import/readSource.ts";
import { readSource } from "../../../taskpane/import/readSource.ts";
import { workbookParts } from "../../../taskpane/import/workbookParts.ts";

const noPause = (): Promise<void> => Promise.resolve();

/** The edits that the pane makes of what the user brought, when nothing is changed by hand but the twins. */
export async function editsFor(
  workbook: Workbook,
  source: ImportSource,
  twins: TwinChoices = { inChart: "skip", inFile: "keep both" },
  keepRefused = true,
): Promise<readonly Edit[]> {
  const { signal } = new AbortController();
  const part = source.kind === "workbook" ? workbookParts(source.content)[0] : undefined;
  const read = await readSource(source, { part }, noPause, signal);
  const tables = await workbook.tables();
  const table = tables.find((t) => t.name === "Figures");
  const data = table && (await workbook.readTable(table.name));
  const present = data && {
    cells: data.values,
    chart: readChart(data.values, { formats: data.formats, mayBeEmpty: true }),
  };
  const { plan, obstacle } = prepare("The file", read, { columns: new Map(), twins, keepRefused }, present);
  if (obstacle !== undefined) throw new Error(obstacle);
  await inSteps(survey(plan), noPause, signal);
  return inSteps(planEdits(plan, table, await workbook.sheets(), { keepRefused }), noPause, signal);
}

export function pasted(text: string): ImportSource {
  return { kind: "text", name: "The pasted text", text };
}

/** The values of a table, headings first. */
export async function valuesOf(workbook: Workbook, table: string): Promise<unknown> {
  return (await workbook.readTable(table)).values;
}
