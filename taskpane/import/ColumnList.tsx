import { Select, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useState } from "react";
import type { ColumnChoice, ImportColumn } from "../../addin/chart/import/columns.ts";
import { unknownHeadings } from "../../addin/chart/import/columns.ts";
import type { UnitOrigin } from "../../addin/chart/import/guessUnits.ts";
import { isUnitOpen } from "../../addin/chart/import/guessUnits.ts";
import type { ImportKind } from "../../addin/chart/import/columns.ts";
import type { TargetColumn } from "../../addin/chart/import/importPlan.ts";
import type { PatternKey } from "../../addin/chart/patternKeys.ts";
import { bodyMeasure, keyName } from "../../addin/chart/patternKeys.ts";
import { columnHeadings } from "../../addin/chart/readPatterns.ts";
import { measureById, measures } from "../../addin/measures/dictionary.ts";
import { lengthUnits } from "../../addin/measures/units.ts";
import { FoldedHowToTake } from "../measure/TapeDrawing.tsx";
import { Disclosure } from "../ui/Disclosure.tsx";
import { meaning } from "../ui/theme.ts";
import { count } from "../ui/words.ts";

const useStyles = makeStyles({
  list: { listStyleType: "none", margin: 0, padding: 0, display: "flex", flexDirection: "column" },
  item: {
    padding: "8px 0",
    borderTop: `1px solid ${tokens.colorNeutralStroke3}`,
    display: "flex",
    flexDirection: "column",
    gap: "4px",
    "&:first-child": { borderTop: "none" },
  },
  heading: { fontWeight: 600, overflowWrap: "anywhere" },
  quiet: { color: tokens.colorNeutralForeground3, fontWeight: 400 },
  choices: { display: "grid", gridTemplateColumns: "minmax(0, 1fr) 88px", gap: "8px" },
  note: {
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    color: tokens.colorNeutralForeground3,
  },
  look: { color: meaning.brass },
  unknown: { margin: 0 },
});

const originWords: Readonly<Record<UnitOrigin, string>> = {
  heading: "Unit from the heading.",
  readings: "Unit from the readings.",
  chart: "Unit found by comparing with your chart.",
  others: "◆ No unit stated, taken as in the other columns: please check.",
  assumed: "◆ No unit stated, taken as mm: please check.",
  guess: "◆ Unit not known, only guessed: please choose.",
  you: "Unit chosen by you.",
};

const figureValue = "figure";
const measurePrefix = "measure:";
const keyPrefix = "key:";
const ownKeys = Object.keys(columnHeadings)
  .filter((key) => key !== "code")
  .map((key) => key as keyof typeof columnHeadings);

/** Every column of the file: what it is taken for, its unit, an example, and where it goes. All changeable. */
export function ColumnList(props: {
  readonly what: ImportKind;
  readonly columns: readonly ImportColumn[];
  readonly targets: readonly TargetColumn[];
  readonly hasTable: boolean;
  readonly onChoose: (position: number, choice: ColumnChoice) => void;
  readonly onFigureColumn: (position: number) => void;
}): ReactNode {
  const styles = useStyles();
  const { what, columns, targets, hasTable } = props;
  const isPatterns = what === "patterns";
  const unknown = isPatterns ? undefined : unknownHeadings(columns);
  // It stays open while one after the other is chosen.
  const [isOpen] = useState(unknown !== undefined);
  return (
    <Disclosure title="Columns" says={summary(columns, what)} open={isOpen}>
      {unknown !== undefined && (
        <p className={styles.unknown}>
          <span className={styles.look}>◆</span> {unknown}
        </p>
      )}
      <ul className={styles.list}>
        {columns.map((column) => {
          const holdsReadings = column.role === "measure" || column.role === "own";
          const target = targets.find((t) => t.from.position === column.position);
          return (
            <li key={column.position} className={styles.item}>
              <span className={styles.heading}>
                {column.heading}
                {column.example !== "" && (
                  <span className={styles.quiet}> – for example {column.example}</span>
                )}
              </span>
              <div className={styles.choices}>
                <Select
                  aria-label={`What “${column.heading}” is`}
                  value={valueOf(column)}
                  onChange={(_, { value }) => {
                    if (value === figureValue) props.onFigureColumn(column.position);
                    else props.onChoose(column.position, choiceOf(value, what));
                  }}
                >
                  <option value={figureValue}>{isPatterns ? "Pattern (its name)" : "Figure name"}</option>
                  {isPatterns &&
                    ownKeys.map((key) => (
                      <option key={key} value={keyPrefix + key}>
                        {keyName(key)}
                      </option>
                    ))}
                  {isPatterns && (
                    <optgroup label="Body that it is to fit">
                      {measures.map(({ id }) => (
                        <option key={id} value={`${keyPrefix}body ${id}`}>
                          {keyName(`body ${id}`)}
                        </option>
                      ))}
                    </optgroup>
                  )}
                  <optgroup label={isPatterns ? "Finished measures" : "Measures"}>
                    {measures.map((measure) => (
                      <option key={measure.id} value={measurePrefix + measure.id}>
                        {isPatterns ? keyName(`finished ${measure.id}`) : measure.name}
                      </option>
                    ))}
                  </optgroup>
                  {(!isPatterns || column.role === "own") && (
                    <option value="own">A measure of its own</option>
                  )}
                  <option value="text">Text</option>
                  <option value="left out">Leave out</option>
                </Select>
                {holdsReadings && (
                  <Select
                    aria-label={`Unit of “${column.heading}”`}
                    value={column.unit}
                    onChange={(_, { value }) => {
                      const unit = lengthUnits.find((u) => u === value);
                      if (unit) props.onChoose(column.position, { unit });
                    }}
                  >
                    {lengthUnits.map((unit) => (
                      <option key={unit}>{unit}</option>
                    ))}
                  </Select>
                )}
              </div>
              <span className={styles.note}>
                {holdsReadings && (
                  <span className={isUnitOpen(column) ? styles.look : undefined}>
                    {originWords[column.unitFrom]}{" "}
                  </span>
                )}
                {target ? goesTo(target, hasTable) : "Not imported."}
              </span>
              {column.measure && <FoldedHowToTake measure={column.measure} />}
            </li>
          );
        })}
      </ul>
    </Disclosure>
  );
}

function valueOf({ key, measure, role }: ImportColumn): string {
  if (measure && !(key && bodyMeasure(key))) return measurePrefix + measure.id;
  return key === undefined || role === "figure" ? role : keyPrefix + key;
}

function choiceOf(value: string, what: ImportKind): ColumnChoice {
  const key = ownKeys.find((each) => value === keyPrefix + each);
  if (key) return { role: "text", key };
  const body = measures.find(({ id }) => value === `${keyPrefix}body ${id}`);
  if (body) return { role: "measure", measure: body, key: `body ${body.id}` };
  const measure = value.startsWith(measurePrefix)
    ? measureById(value.slice(measurePrefix.length))
    : undefined;
  if (measure) {
    const finished: PatternKey = `finished ${measure.id}`;
    return { role: "measure", measure, ...(what === "patterns" && { key: finished }) };
  }
  return { role: value === "own" || value === "text" ? value : "left out" };
}

function goesTo(target: TargetColumn, hasTable: boolean): string {
  const isNew = hasTable && target.position === undefined;
  return `Goes to ${isNew ? "a new column" : "the column"} “${target.heading}”.`;
}

function summary(columns: readonly ImportColumn[], what: ImportKind): string {
  const known = columns.filter((c) => c.role === "measure").length;
  const own = columns.filter((c) => c.role === "own").length;
  const guessed = columns.some((c) => isUnitOpen(c) && (c.role === "measure" || c.role === "own"));
  const kept = columns.filter((c) => c.key !== undefined && c.role !== "left out").length;
  if (what === "patterns")
    return [
      `${String(kept)} of ${count(columns.length, "column")} recognised`,
      ...(guessed ? ["units assumed, please check"] : []),
    ].join(", ");
  return [
    `${count(known, "measure")} recognised`,
    ...(own > 0 ? [`${String(own)} of ${own === 1 ? "its" : "their"} own`] : []),
    ...(guessed ? ["units assumed, please check"] : []),
  ].join(", ");
}
