import { Button, Checkbox, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useState } from "react";
import type { ImportPlan } from "../../addin/chart/import/importPlan.ts";
import type { Refusal } from "../../addin/chart/import/survey.ts";
import { Disclosure } from "../ui/Disclosure.tsx";
import { meaning } from "../ui/theme.ts";
import { count } from "../ui/words.ts";

const useStyles = makeStyles({
  list: {
    margin: 0,
    padding: 0,
    listStyleType: "none",
    display: "flex",
    flexDirection: "column",
    gap: "8px",
  },
  item: { borderLeft: `3px solid ${meaning.thread}`, paddingLeft: "8px", overflowWrap: "anywhere" },
  place: { fontWeight: 600 },
  quiet: { color: tokens.colorNeutralForeground3, fontWeight: 400 },
});

const pageSize = 20;

/** Every reading that could not be read, with the reason. */
export function Refusals(props: {
  readonly plan: ImportPlan;
  readonly refusals: readonly Refusal[];
  readonly keep: boolean;
  readonly onKeep: (keep: boolean) => void;
}): ReactNode {
  const styles = useStyles();
  const { plan, refusals, keep, onKeep } = props;
  const [shown, setShown] = useState(pageSize);
  if (refusals.length === 0) return null;
  return (
    <Disclosure title={`✕ ${count(refusals.length, "reading")} could not be read`} open>
      <ul className={styles.list}>
        {refusals.slice(0, shown).map((refusal) => {
          const figure = plan.figures[refusal.figure];
          const row = figure && (plan.laidOut.source.numbers[figure.row] ?? figure.row + 1);
          return (
            <li key={`${String(refusal.figure)} ${String(refusal.target)}`} className={styles.item}>
              <div className={styles.place}>
                {figure?.name}, {plan.targets[refusal.target]?.from.name}{" "}
                <span className={styles.quiet}>row {row} of the file</span>
              </div>
              {refusal.reason}
            </li>
          );
        })}
      </ul>
      {refusals.length > shown && (
        <Button
          onClick={() => {
            setShown(shown + 5 * pageSize);
          }}
        >
          Show more ({(refusals.length - shown).toLocaleString("en-GB")} left)
        </Button>
      )}
      <Checkbox
        checked={keep}
        onChange={(_, data) => {
          onKeep(data.checked === true);
        }}
        label="Put them into the chart as text, marked, to be mended there"
      />
    </Disclosure>
  );
}
