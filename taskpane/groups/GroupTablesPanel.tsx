import { makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import type { TableInfo } from "../../addin/workbook/port.ts";
import { Choice } from "../Choice.tsx";
import { Disclosure } from "../Disclosure.tsx";
import type { ChosenForGroups, GroupsInput } from "./readGroups.ts";

const useStyles = makeStyles({ text: { margin: 0 } });

/** Which tables are used: the chart, and the tolerances. */
export function GroupTablesPanel(props: {
  readonly input: GroupsInput;
  readonly chosen: ChosenForGroups;
  readonly onChoose: (chosen: ChosenForGroups) => void;
}): ReactNode {
  const styles = useStyles();
  const { input, chosen, onChoose } = props;
  const { charts, toleranceTables, figures } = input;
  const usual = ["", "The usual ones of Measure Book"] as const;
  const own = chosen.tolerances ?? figures?.tolerancesTable?.name ?? toleranceTables[0]?.name ?? "";
  return (
    <Disclosure
      title="Tables"
      says={`${figures?.table.name ?? charts[0]?.name ?? "no chart"}, ${own === "" ? "usual tolerances" : own}`}
    >
      {charts.length > 1 && (
        <Choice
          label="Chart"
          value={figures?.table.name ?? chosen.figures ?? ""}
          options={charts.map(option)}
          onChoose={(name) => {
            onChoose({ ...chosen, figures: name });
          }}
        />
      )}
      {toleranceTables.length > 0 && (
        <Choice
          label="Tolerances"
          value={own}
          options={[...toleranceTables.map(option), usual]}
          onChoose={(name) => {
            onChoose({ ...chosen, tolerances: name });
          }}
        />
      )}
      <p className={styles.text}>
        A table of tolerances has the headings Measure and Tolerance, and if you like a column for each class
        of garments: how far each measure may differ for them. Where it has no row for a measure, the usual
        tolerance counts.
      </p>
    </Disclosure>
  );
}

function option({ name, area }: TableInfo): readonly [string, string] {
  return [name, `${name} on sheet ${area.sheet}`];
}
