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

/** Every reading that could not be read, and every pattern that cannot be used as it is, with the reason. */
export function Refusals(props: {
  readonly plan: ImportPlan;
  readonly refusals: readonly Refusal[];
  /** By index into the plan’s figures. */
  readonly unusable: ReadonlyMap<number, string>;
  readonly keep: boolean;
  readonly onKeep: (keep: boolean) => void;
}): ReactNode {
  const styles = useStyles();
  const { plan, refusals, unusable, keep, onKeep } = props;
  const [shown, setShown] = useState(pageSize);
  const isPatterns = plan.what === "patterns";
  const refused = new Set(refusals.map(({ figure }) => figure));
  const rows = [...unusable].filter(([figure]) => !refused.has(figure));
  if (refusals.length + rows.length === 0) return null;
  const titles = [
    ...(refusals.length === 0
      ? []
      : isPatterns
        ? [`${count(refusals.length, "entry", "entries")} could not be understood`]
        : [`${count(refusals.length, "reading")} could not be read`]),
    ...(rows.length === 0 ? [] : [`${count(rows.length, "pattern")} cannot be judged as it is`]),
  ];
  const fileRow = (at: number): number => {
    const { row = 0 } = plan.figures[at] ?? {};
    return plan.laidOut.source.numbers[row] ?? row + 1;
  };
  return (
    <Disclosure title={`✕ ${titles.join(", ")}`} open>
      <ul className={styles.list}>
        {refusals.slice(0, shown).map((refusal) => {
          const figure = plan.figures[refusal.figure];
          return (
            <li key={`${String(refusal.figure)} ${String(refusal.target)}`} className={styles.item}>
              <div className={styles.place}>
                {figure?.name}, {plan.targets[refusal.target]?.from.name}{" "}
                <span className={styles.quiet}>row {fileRow(refusal.figure)} of the file</span>
              </div>
              {refusal.reason}
            </li>
          );
        })}
        {rows.map(([at, reason]) => (
          <li key={at} className={styles.item}>
            <div className={styles.place}>
              {plan.figures[at]?.name} <span className={styles.quiet}>row {fileRow(at)} of the file</span>
            </div>
            {reason}
          </li>
        ))}
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
        label={
          isPatterns
            ? "Put them into the table all the same, to be mended there"
            : "Put them into the chart as text, marked, to be mended there"
        }
      />
    </Disclosure>
  );
}
