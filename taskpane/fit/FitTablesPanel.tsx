import { Button, makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { Choice } from "../ui/Choice.tsx";
import { Disclosure } from "../ui/Disclosure.tsx";
import { readingErrorWords } from "../groups/secondReadings.ts";
import { useSession } from "../shell/session.ts";
import type { ChosenTables, FitRole } from "./fitTables.ts";
import type { Fit } from "./readFit.ts";
import type { StarterTable } from "../shell/starterTable.ts";
import { easeRulesStarter, garmentClassesStarter } from "./starterTables.ts";

const useStyles = makeStyles({
  text: { margin: 0 },
  button: { alignSelf: "flex-start" },
});

const roleWords: Readonly<Record<FitRole, string>> = {
  figures: "Figures",
  patterns: "Patterns",
  easeRules: "Ease rules",
  garmentClasses: "Garment classes",
};

/** Which tables are used; adds the project’s own rules and classes as tables to be changed. */
export function FitTablesPanel(props: {
  readonly fit: Fit;
  readonly chosen: ChosenTables;
  readonly onChoose: (chosen: ChosenTables) => void;
}): ReactNode {
  const styles = useStyles();
  const { apply, working } = useSession();
  const { fit, chosen, onChoose } = props;
  const { found, used } = fit;
  const taken = { sheets: fit.sheets, tables: fit.tables.map(({ name }) => name) };

  function choice(role: FitRole, own?: string): ReactNode {
    const options = found[role].map(({ name, area }) => [name, `${name} on sheet ${area.sheet}`] as const);
    if (options.length + (own === undefined ? 0 : 1) < 2) return null;
    return (
      <Choice
        label={roleWords[role]}
        value={used[role]?.name ?? ""}
        options={own === undefined ? options : [...options, ["", own]]}
        onChoose={(name) => {
          onChoose({ ...chosen, [role]: name });
        }}
      />
    );
  }

  function offer(role: "easeRules" | "garmentClasses", starter: () => StarterTable): ReactNode {
    if (found[role].length > 0) return null;
    const name = roleWords[role].toLowerCase();
    return (
      <Button
        className={styles.button}
        disabledFocusable={working !== undefined}
        onClick={() => {
          const { edits, sheet, table } = starter();
          void apply(`Add the ${name}`, edits, {
            kind: "done",
            text: `The ${name} are in the table ${table} on the sheet “${sheet}”. What you change there counts from now on.`,
          });
        }}
      >
        Add the {name} as a table
      </Button>
    );
  }

  return (
    <Disclosure title="Tables and rules" says={saysOf(fit)}>
      {choice("figures")}
      {choice("patterns")}
      {choice("easeRules", "Those of Measure Book")}
      {choice("garmentClasses", "Those of Measure Book")}
      <p className={styles.text}>
        The ease rules say how much larger than the body a garment is; the garment classes, where it is worn
        and what it has to pass. Each rule names its source. To change them, add them to the workbook.
      </p>
      {fit.chart && fit.second && (
        <p className={styles.text}>
          What is too close to call goes by how exact readings are.{" "}
          {readingErrorWords(
            fit.second,
            fit.chart.measures.map((column) => ({ column })),
          )}
        </p>
      )}
      {offer("easeRules", () => easeRulesStarter(taken))}
      {offer("garmentClasses", () => garmentClassesStarter(taken))}
    </Disclosure>
  );
}

function saysOf({ used }: Fit): string {
  const own = [used.easeRules, used.garmentClasses].flatMap((table) => (table ? [table.name] : []));
  const names = [used.figures, used.patterns].flatMap((table) => (table ? [table.name] : []));
  return [...names, ...(own.length > 0 ? own : ["rules of Measure Book"])].join(", ");
}
