import { Switch, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useState } from "react";
import type { Check } from "../../addin/fit/check.ts";
import type { ExplainedRoute, Explanation } from "../../addin/fit/explainPair.ts";
import { CheckCard } from "./CheckCard.tsx";
import { ChecksTable } from "./ChecksTable.tsx";
import { VerdictWords } from "./VerdictWords.tsx";

const useStyles = makeStyles({
  part: { display: "flex", flexDirection: "column", gap: "8px" },
  heading: { margin: 0, fontSize: tokens.fontSizeBase400, fontWeight: 600 },
  list: {
    listStyleType: "none",
    margin: 0,
    padding: 0,
    display: "flex",
    flexDirection: "column",
    gap: "8px",
  },
  plain: { margin: 0, paddingLeft: "20px" },
  text: { margin: 0 },
  quiet: { margin: 0, color: tokens.colorNeutralForeground3 },
});

interface Part {
  readonly key: string;
  readonly title: string;
  readonly route?: ExplainedRoute;
  readonly checks: readonly Check[];
}

/** Every check of a pattern on a figure, drawn: its measures, then each way of putting it on. */
export function WhyNot(props: { readonly explanation: Explanation; readonly comfort: number }): ReactNode {
  const styles = useStyles();
  const { explanation, comfort } = props;
  const [asTable, setAsTable] = useState(false);
  return (
    <>
      {explanation.take.length > 0 && (
        <section className={styles.part}>
          <h2 className={styles.heading}>Measure first</h2>
          <ul className={styles.plain}>
            {explanation.take.map((what) => (
              <li key={what}>{what}</li>
            ))}
          </ul>
        </section>
      )}
      <Switch
        label="Show as table"
        checked={asTable}
        onChange={(_, data) => {
          setAsTable(data.checked);
        }}
      />
      {partsOf(explanation).map(({ key, title, route, checks }) => (
        <section key={key} className={styles.part}>
          <h2 className={styles.heading}>{title}</h2>
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
              <ul className={styles.list}>
                {checks.map((check, i) => (
                  <CheckCard key={`${String(i)} ${check.place}`} check={check} comfort={comfort} />
                ))}
              </ul>
            ))}
        </section>
      ))}
      {explanation.notes.map((note) => (
        <p key={note} className={styles.quiet}>
          {note}
        </p>
      ))}
    </>
  );
}

function partsOf({ checks, routes }: Explanation): readonly Part[] {
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
  ].filter((part) => part.checks.length > 0 || "route" in part);
}
