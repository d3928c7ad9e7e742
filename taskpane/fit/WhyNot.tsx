import { Switch, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useState } from "react";
import type { Check } from "../../addin/fit/check.ts";
import type { ExplainedRoute, Explanation } from "../../addin/fit/explainPair.ts";
import { Cards } from "./Cards.tsx";
import { CheckCard } from "./CheckCard.tsx";
import { ChecksTable } from "./ChecksTable.tsx";
import { MeasureFirst, Part } from "../ui/Part.tsx";
import { VerdictWords } from "./VerdictWords.tsx";

const useStyles = makeStyles({
  text: { margin: 0 },
  quiet: { margin: 0, color: tokens.colorNeutralForeground3 },
});

/** Checks that belong together. */
interface Group {
  readonly key: string;
  readonly title: string;
  readonly route?: ExplainedRoute;
  readonly checks: readonly Check[];
}

/** Every check of a pattern on a figure, drawn: its measures, then each way of putting it on. */
export function WhyNot(props: { readonly explanation: Explanation }): ReactNode {
  const styles = useStyles();
  const { explanation } = props;
  const [asTable, setAsTable] = useState(false);
  return (
    <>
      <MeasureFirst take={explanation.take} />
      <Switch
        label="Show as table"
        checked={asTable}
        onChange={(_, data) => {
          setAsTable(data.checked);
        }}
      />
      {groupsOf(explanation).map(({ key, title, route, checks }) => (
        <Part key={key} title={title}>
          {route && (
            <p className={styles.text}>
              <VerdictWords verdict={route.verdict} />
              {checks.length === 0 && ": nothing has to be passed."}
            </p>
          )}
          {checks.length > 0 &&
            (asTable ? (
              <ChecksTable label={title} checks={checks} />
            ) : (
              <Cards>
                {checks.map((check, i) => (
                  <CheckCard key={`${String(i)} ${check.place}`} check={check} />
                ))}
              </Cards>
            ))}
        </Part>
      ))}
      {explanation.notes.map((note) => (
        <p key={note} className={styles.quiet}>
          {note}
        </p>
      ))}
    </>
  );
}

function groupsOf({ checks, routes }: Explanation): readonly Group[] {
  const measures = checks.filter(({ kind }) => kind !== "opening");
  const limbs = checks.filter(({ kind, route }) => kind === "opening" && route === undefined);
  const several = routes.length > 1;
  return [
    { key: "measures", title: "Measures", checks: measures },
    { key: "limbs", title: "Arms and legs", checks: limbs },
    ...routes.map((route) => ({
      key: route.name,
      title: `Put on: ${route.name}${several && route.isBest ? " (the better way)" : ""}`,
      route,
      checks: checks.filter((check) => check.route === route.name),
    })),
  ].filter((group) => group.checks.length > 0 || "route" in group);
}
