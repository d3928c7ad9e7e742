import { Button, makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { sameName } from "../../addin/workbook/names.ts";
import type { TableInfo } from "../../addin/workbook/port.ts";
import { Choice } from "../ui/Choice.tsx";
import { Disclosure } from "../ui/Disclosure.tsx";
import { useSession } from "../shell/session.ts";
import { count } from "../ui/words.ts";
import type { ChosenForGroups, FiguresToGroup, GroupsInput } from "./readGroups.ts";
import { secondWords, usualSecond } from "./secondReadings.ts";
import { secondStarter } from "./secondStarter.ts";

const useStyles = makeStyles({
  text: { margin: 0, overflowWrap: "anywhere" },
  button: { alignSelf: "flex-start" },
});

/** Which tables are used: the chart, the tolerances, and second readings. */
export function GroupTablesPanel(props: {
  readonly input: GroupsInput;
  readonly chosen: ChosenForGroups;
  readonly onChoose: (chosen: ChosenForGroups) => void;
}): ReactNode {
  const styles = useStyles();
  const { input, chosen, onChoose } = props;
  const { charts, toleranceTables, secondTables, figures } = input;
  const usual = ["", "The usual ones of Measure Book"] as const;
  const own = chosen.tolerances ?? figures?.tolerancesTable?.name ?? toleranceTables[0]?.name ?? "";
  const second = figures?.second.table;
  return (
    <Disclosure
      title="Tables"
      says={`${figures?.table.name ?? charts[0]?.name ?? "no chart"}, ${own === "" ? "usual tolerances" : own}${second ? `, ${second.name}` : ""}`}
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
      {figures && secondTables.length > 0 && (
        <Choice
          label="Second readings"
          value={second?.name ?? ""}
          options={[...secondTables.map(option), ["", "None"]]}
          onChoose={(name) => {
            onChoose({ ...chosen, second: name });
          }}
        />
      )}
      {figures && <AboutSecond input={input} figures={figures} />}
    </Disclosure>
  );
}

/** What second readings are for, what became of them, and a table to begin with. */
function AboutSecond(props: { readonly input: GroupsInput; readonly figures: FiguresToGroup }): ReactNode {
  const styles = useStyles();
  const { apply, working } = useSession();
  const { input, figures } = props;
  const { chart, second } = figures;
  async function add(): Promise<void> {
    const taken = { sheets: input.sheets, tables: input.tables.map(({ name }) => name) };
    const { edits, sheet, table } = secondStarter(figures, taken);
    await apply("Add a table for second readings", edits, {
      kind: "done",
      text: `The table ${table} is on the sheet “${sheet}”. Fill in what you measure a second time; leave the rest empty.`,
    });
  }
  return (
    <>
      <p className={styles.text}>
        Second readings are figures of the chart measured again, without a look at the first readings, in a
        table of their own or in further rows of the chart under the same name. They show how exact your
        readings are, and so how sure it is that figures share. A table {usualSecond} is taken by itself.
      </p>
      {secondWords(second).map((words) => (
        <p key={words} className={styles.text}>
          {words}
        </p>
      ))}
      {!input.tables.some(({ name }) => sameName(name, usualSecond)) && (
        <>
          <p className={styles.text}>
            You can add such a table, with the {count(chart.figures.length, "figure")} and{" "}
            {count(chart.measures.length, "measure")} of the chart and no readings yet, on a new sheet.
          </p>
          <Button
            className={styles.button}
            disabledFocusable={working !== undefined}
            onClick={() => void add()}
          >
            Add a table for second readings
          </Button>
        </>
      )}
    </>
  );
}

function option({ name, area }: TableInfo): readonly [string, string] {
  return [name, `${name} on sheet ${area.sheet}`];
}
