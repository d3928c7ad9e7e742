import { Button, makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import type { TableInfo } from "../../addin/workbook/port.ts";
import { Choice } from "../ui/Choice.tsx";
import { Disclosure } from "../ui/Disclosure.tsx";
import { useSession } from "../shell/session.ts";
import type { ChosenForGrading, GradingInput } from "./readGrading.ts";
import { gradeRulesStarter } from "./rulesStarter.ts";

const useStyles = makeStyles({
  text: { margin: 0 },
  button: { alignSelf: "flex-start" },
});

/** Which tables are used; adds the grade rules of the project as a table to be changed. */
export function RulesPanel(props: {
  readonly input: GradingInput;
  readonly chosen: ChosenForGrading;
  readonly onChoose: (chosen: ChosenForGrading) => void;
}): ReactNode {
  const styles = useStyles();
  const { apply, working } = useSession();
  const { input, chosen, onChoose } = props;
  const { sheets, tables, charts, toleranceTables, ruleTables, ruleSet, figures } = input;
  const rules = ruleSet.table?.name;
  const tolerances = figures?.tolerancesTable?.name;

  return (
    <Disclosure
      title="Tables and rules"
      says={[figures?.table.name, tolerances, rules ?? "grade rules of Measure Book"]
        .filter((name) => name !== undefined)
        .join(", ")}
    >
      {charts.length > 1 && (
        <Choice
          label="Chart"
          value={figures?.table.name ?? ""}
          options={charts.map(named)}
          onChoose={(name) => {
            onChoose({ ...chosen, figures: name });
          }}
        />
      )}
      {toleranceTables.length > 0 && (
        <Choice
          label="Tolerances"
          value={tolerances ?? ""}
          options={[...toleranceTables.map(named), ["", "The usual ones of Measure Book"]]}
          onChoose={(name) => {
            onChoose({ ...chosen, tolerances: name });
          }}
        />
      )}
      {ruleTables.length > 0 && (
        <Choice
          label="Grade rules"
          value={rules ?? ""}
          options={[...ruleTables.map(named), ["", "Those of Measure Book"]]}
          onChoose={(name) => {
            onChoose({ ...chosen, rules: name });
          }}
        />
      )}
      <p className={styles.text}>
        The grade rules say by what share of a measure each point moves: a quarter of a girth on each half
        front and half back. To change them, add them to the workbook as a table.
      </p>
      {ruleTables.length === 0 && (
        <Button
          className={styles.button}
          disabledFocusable={working !== undefined}
          onClick={() => {
            const taken = { sheets, tables: tables.map(({ name }) => name) };
            const { edits, sheet, table } = gradeRulesStarter(taken);
            void apply("Add a table of grade rules", edits, {
              kind: "done",
              text: `The grade rules are in the table ${table} on the sheet “${sheet}”. What you change there counts from now on.`,
            });
          }}
        >
          Add a table of grade rules
        </Button>
      )}
    </Disclosure>
  );
}

function named({ name, area }: TableInfo): readonly [string, string] {
  return [name, `${name} on sheet ${area.sheet}`];
}
