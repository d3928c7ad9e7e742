import { Button, Checkbox, makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useMemo, useState } from "react";
import { cellText } from "../../addin/chart/cell.ts";
import type { Cell } from "../../addin/chart/cell.ts";
import type { ImportFigure } from "../../addin/chart/import/figures.ts";
import type { ImportPlan, PlannedCell } from "../../addin/chart/import/importPlan.ts";
import type { Survey } from "../../addin/chart/import/survey.ts";
import { meaning } from "../ui/theme.ts";
import { shownNumber } from "../ui/words.ts";
import { nouns } from "./nouns.ts";

const useStyles = makeStyles({
  box: { display: "flex", flexDirection: "column", gap: "8px", minWidth: 0 },
  title: {
    margin: 0,
    fontSize: tokens.fontSizeBase400,
    lineHeight: tokens.lineHeightBase400,
    fontWeight: 600,
  },
  scroll: {
    overflowX: "auto",
    maxHeight: "420px",
    overflowY: "auto",
    border: `1px solid ${tokens.colorNeutralStroke1}`,
    borderRadius: tokens.borderRadiusMedium,
    backgroundColor: tokens.colorNeutralBackground1,
    "&:focus-visible": { outline: `2px solid ${meaning.chalk}` },
  },
  table: {
    borderCollapse: "separate",
    borderSpacing: 0,
    fontSize: tokens.fontSizeBase200,
    lineHeight: 1.5,
  },
  cell: {
    padding: "4px 8px",
    textAlign: "right",
    whiteSpace: "nowrap",
    borderBottom: `1px solid ${tokens.colorNeutralStroke3}`,
  },
  text: { textAlign: "left" },
  head: {
    position: "sticky",
    top: 0,
    zIndex: 1,
    backgroundColor: tokens.colorNeutralBackground3,
    fontWeight: 600,
    verticalAlign: "bottom",
    whiteSpace: "normal",
    minWidth: "80px",
  },
  name: {
    position: "sticky",
    left: 0,
    zIndex: 1,
    textAlign: "left",
    fontWeight: 600,
    minWidth: "96px",
    maxWidth: "120px",
    whiteSpace: "normal",
    overflowWrap: "anywhere",
    backgroundColor: tokens.colorNeutralBackground1,
    borderRight: `1px solid ${tokens.colorNeutralStroke1}`,
  },
  corner: { zIndex: 2, backgroundColor: tokens.colorNeutralBackground3 },
  quiet: { color: tokens.colorNeutralForeground3, fontWeight: 400 },
  refused: { color: meaning.thread, backgroundColor: meaning.threadGround },
  changed: { color: meaning.brass, backgroundColor: meaning.brassGround },
  key: {
    margin: 0,
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    color: tokens.colorNeutralForeground3,
  },
});

const pageSize = 20;

/** Every reading as it will be stored, figure by measure. What is refused or changes carries a sign and a colour. */
export function Preview({ plan, survey }: { readonly plan: ImportPlan; readonly survey: Survey }): ReactNode {
  const styles = useStyles();
  const { one, many, place, entry } = nouns[plan.what];
  const [shown, setShown] = useState(pageSize);
  const [onlyRefused, setOnlyRefused] = useState(false);
  const refused = useMemo(() => [...new Set(survey.refusals.map((r) => r.figure))], [survey]);
  const total = onlyRefused ? refused.length : plan.figures.length;
  const listed = Array.from({ length: Math.min(shown, total) }, (_, i) =>
    onlyRefused ? (refused[i] ?? i) : i,
  );
  const nameTarget = plan.targets.find((t) => t.holds === "name");
  const others = plan.targets
    .map((target, index) => ({ target, index }))
    .filter(({ target }) => target !== nameTarget);
  return (
    <section className={styles.box} aria-label="Preview">
      <h2 className={styles.title}>As it will be stored</h2>
      {survey.refusals.length > 0 && (
        <Checkbox
          checked={onlyRefused}
          onChange={(_, data) => {
            setOnlyRefused(data.checked === true);
          }}
          label={
            plan.what === "figures"
              ? "Only figures with readings that could not be read"
              : "Only patterns with entries that could not be understood"
          }
        />
      )}
      <div className={styles.scroll} tabIndex={0} role="group" aria-label="Preview table, scrolls sideways">
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col" className={mergeClasses(styles.cell, styles.head, styles.name, styles.corner)}>
                {one.charAt(0).toUpperCase() + one.slice(1)}
              </th>
              {others.map(({ target, index }) => (
                <th
                  key={index}
                  scope="col"
                  className={mergeClasses(styles.cell, styles.head, target.holds === "text" && styles.text)}
                >
                  {target.heading}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {listed.map((f) => (
              <tr key={f}>
                <th scope="row" className={mergeClasses(styles.cell, styles.name)}>
                  {plan.figures[f]?.name} <span className={styles.quiet}>{figureWord(plan.figures[f])}</span>
                </th>
                {others.map(({ target, index: t }) => {
                  const cell = plan.cell(f, t);
                  return (
                    <td
                      key={t}
                      className={mergeClasses(
                        styles.cell,
                        target.holds === "text" && styles.text,
                        (cell.kind === "blank" || cell.kind === "same") && styles.quiet,
                        cell.kind === "refused" && styles.refused,
                        cell.kind === "changed" && styles.changed,
                      )}
                      title={cell.kind === "refused" ? cell.reason : undefined}
                    >
                      {plan.figures[f]?.action === "skip" ? "" : cellWords(cell)}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className={styles.key}>
        – {entry === "reading" ? "not taken" : "not said"} · ✕ could not be read · old → new where the {place}{" "}
        changes · = as in the {place}
      </p>
      {total > shown && (
        <Button
          onClick={() => {
            setShown(shown + pageSize);
          }}
        >
          Show more {many} ({(total - shown).toLocaleString("en-GB")} left)
        </Button>
      )}
    </section>
  );
}

function figureWord(figure: ImportFigure | undefined): string {
  if (figure?.action === "skip") return "skipped";
  return figure?.action === "update" ? "updated" : "";
}

function cellWords(cell: PlannedCell): string {
  const words = wordsAlone(cell);
  return cell.says === undefined ? words : cell.kind === "blank" ? cell.says : `${words} (${cell.says})`;
}

function wordsAlone(cell: PlannedCell): string {
  switch (cell.kind) {
    case "blank":
      return "–";
    case "new":
      return shown(cell.value);
    case "changed":
      return `${shown(cell.old)} → ${shown(cell.value)}`;
    case "same":
      return `= ${shown(cell.value)}`;
    case "refused":
      return `✕ ${cell.text}`;
  }
}

function shown(value: Cell): string {
  return typeof value === "number" ? shownNumber(value) : cellText(value);
}
