import { Field, Input } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useState } from "react";
import type { Cell } from "../../addin/chart/cell.ts";
import { apart } from "../../addin/similarity/pair.ts";
import { zoneChoices } from "../../addin/similarity/columns.ts";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import type { GroupCard } from "../../addin/similarity/cards.ts";
import { shown } from "../../functions/shown.ts";
import { worstMeasure } from "../../functions/worstMeasure.ts";
import { count } from "../ui/words.ts";
import { WriteBox } from "../shell/WriteBox.tsx";
import { scaledColumns } from "./grouping.ts";
import type { FiguresToGroup, GroupsInput } from "./readGroups.ts";
import { groupHeading, planColumn } from "./writeColumn.ts";
import type { SheetToWrite } from "./writeSheet.ts";
import { formulaOf, planFormula, planValues } from "./writeSheet.ts";
import type { GroupSettings } from "./grouping.ts";

const forms = {
  column: "Into a column of the chart",
  formulas: "To a new sheet, as a formula that follows every change",
  values: "To a new sheet, as words and numbers that stay as they are",
} as const;

/** Writes the groups: to the chart, or to a sheet of their own. */
export function WriteGroups(props: {
  readonly input: GroupsInput;
  readonly figures: FiguresToGroup;
  /** With the tolerances of the workbook. */
  readonly columns: readonly ComparedColumn[];
  readonly settings: GroupSettings;
  readonly groupOf: Int32Array;
  readonly cards: readonly GroupCard[];
  /** What the group of each figure rests on; not there while the chart is being checked. */
  readonly marks: readonly string[] | undefined;
  readonly asked: number;
}): ReactNode {
  const { input, figures, columns, settings, groupOf, cards, marks, asked } = props;
  const [heading, setHeading] = useState(groupHeading);
  const { part, method, cut } = settings;
  const isZone = zoneChoices.some((zone) => zone === part);
  return (
    <WriteBox
      title="Write the groups"
      forms={forms}
      plan={(form) => {
        if (form === "column") return planColumn(figures, groupOf, heading);
        const sheet = sheetToWrite(figures, scaledColumns(columns, cut), cards, marks);
        if (form === "values") return planValues(sheet, input);
        return planFormula(
          sheet,
          {
            formula: (tolerances) =>
              formulaOf("FIT.GROUPS", figures, tolerances, [
                `"${part.replaceAll('"', '""')}"`,
                `"${method}"`,
                ...(figures.estimates.areCounted ? ['"count"'] : []),
              ]),
            times: cut,
            columns,
            garment: isZone ? undefined : part,
          },
          input,
          figures,
        );
      }}
      more={(form) =>
        form === "column" && (
          <Field label="Heading of the column">
            <Input
              value={heading}
              onChange={(_, data) => {
                setHeading(data.value);
              }}
            />
          </Field>
        )
      }
      asked={asked}
    />
  );
}

/** The same table as the worksheet function GROUPS gives. */
function sheetToWrite(
  { chart }: FiguresToGroup,
  columns: readonly ComparedColumn[],
  cards: readonly GroupCard[],
  marks: readonly string[] = [],
): SheetToWrite {
  const areMarked = marks.some((mark) => mark !== "");
  const rows: (readonly Cell[])[] = [];
  for (const { number, base, figures, places } of cards) {
    const basePlace = places[figures.indexOf(base)] ?? 0;
    for (const place of places) {
      const fromBase = apart(columns, basePlace, place);
      rows[place] = [
        ...[chart.figures[place], number, base, worstMeasure(fromBase), shown(fromBase.distance)],
        ...(areMarked ? [marks[place]] : []),
      ];
    }
  }
  return {
    name: "Shared bodies",
    title: "Who shares a body",
    what: `groups of ${count(chart.figures.length, "figure")}`,
    values: [
      ["Figure", "Group", "Base figure", "Worst measure", "Of tolerance", ...(areMarked ? ["Doubtful"] : [])],
      ...rows,
    ],
    widths: [128, 72, 128, 144, 104, ...(areMarked ? [400] : [])],
  };
}
