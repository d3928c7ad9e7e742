import type { PickListContent } from "../content.ts";
import { sameName } from "../names.ts";
import type { Edit } from "../port.ts";
import { rangeOf } from "./ranges.ts";
import { operation, send } from "./requests.ts";
import { loadTables } from "./shape.ts";

/**
 * Give new sheets their lists to choose from, once every table is there whose column a list names. Lists of tables that
 * are not in the workbook are left out.
 */
export async function addPickLists(context: Excel.RequestContext, edits: readonly Edit[]): Promise<void> {
  const lists = edits.flatMap((edit) =>
    edit.kind === "sheet"
      ? (edit.sheet.pickLists ?? []).map((list) => ({ ...list, sheet: edit.sheet.name }))
      : [],
  );
  if (lists.length === 0) return;
  const tables = await loadTables(context);
  const isThere = ({ from }: PickListContent): boolean =>
    !("table" in from) ||
    tables.some(
      ({ name, headings }) =>
        sameName(name, from.table) && headings.some((heading) => sameName(heading, from.heading)),
    );
  await send(
    context,
    lists.filter(isThere).map((list) =>
      operation((queued) => {
        const { dataValidation } = rangeOf(queued, list);
        dataValidation.rule = { list: { inCellDropDown: true, source: sourceOf(queued, list) } };
        // Something else can be typed all the same.
        dataValidation.errorAlert = { showAlert: false, style: "Information", title: "", message: "" };
      }),
    ),
  );
}

function sourceOf(context: Excel.RequestContext, { from }: PickListContent): string | Excel.Range {
  if (!("table" in from)) return from.join(",");
  return context.workbook.tables.getItem(from.table).columns.getItem(from.heading).getDataBodyRange();
}
