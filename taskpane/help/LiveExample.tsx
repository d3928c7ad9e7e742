import { Button, Field, Input, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useCallback, useDeferredValue, useId, useMemo, useState } from "react";
import { cellText, isBlank } from "../../addin/chart/cell.ts";
import { areaName, cellName } from "../../addin/workbook/address.ts";
import type { CellAddress } from "../../addin/workbook/port.ts";
import type { FunctionDescriptor, Table } from "../../functions/descriptor.ts";
import type { Book } from "../shell/book.ts";
import { failureText } from "../shell/notice.ts";
import { useSession } from "../shell/session.ts";
import { useRead } from "../shell/useRead.ts";
import { Choice } from "../ui/Choice.tsx";
import { FailureBox } from "../ui/FailureBox.tsx";
import { PlainTable } from "../ui/PlainTable.tsx";
import { count, shownNumber } from "../ui/words.ts";
import type { Given, LiveAnswer, Tables } from "./liveExample.ts";
import { argumentFields, workOut } from "./liveExample.ts";

const useStyles = makeStyles({
  text: { margin: 0 },
  code: { fontFamily: tokens.fontFamilyMonospace, overflowWrap: "anywhere" },
  field: { minWidth: 0, "> input": { minWidth: 0 } },
  button: { alignSelf: "flex-start" },
  example: { display: "flex", flexDirection: "column", gap: "8px", minWidth: 0 },
  heading: { margin: 0, fontSize: "inherit", fontWeight: 600 },
});

/** Tables beyond which a workbook is something else; none of them is read for an example. */
const mostTables = 60;
/** Figures beyond which nothing is worked out before it is asked for. */
const atOnce = 300;

async function readTables(book: Book): Promise<{ readonly found?: Tables; readonly failure?: string }> {
  try {
    const tables = (await book.tables()).slice(0, mostTables);
    const read = await Promise.all(tables.map(async ({ name }) => (await book.readTable(name)).values));
    return { found: book.once(tablesOf, tables, ...read) };
  } catch (error) {
    return { failure: failureText(error) };
  }
}

function tablesOf(
  tables: Tables["tables"],
  ...read: readonly (Tables["cells"] extends ReadonlyMap<string, infer C> ? C : never)[]
): Tables {
  return { tables, cells: new Map(tables.map(({ name }, i) => [name, read[i] ?? []])) };
}

/** The function on this workbook: its arguments to choose, what it gives, and the formula into the selected cell. */
export function LiveExample({ descriptor }: { readonly descriptor: FunctionDescriptor }): ReactNode {
  const styles = useStyles();
  const read = useRead(readTables, undefined);
  if (read?.failure !== undefined)
    return <FailureBox what="The workbook cannot be read." why={read.failure} />;
  if (!read?.found) return <p className={styles.text}>Looking at your tables …</p>;
  return <Example descriptor={descriptor} tables={read.found} />;
}

function Example(props: { readonly descriptor: FunctionDescriptor; readonly tables: Tables }): ReactNode {
  const styles = useStyles();
  const { descriptor, tables } = props;
  const [given, setGiven] = useState<Given>({});
  const [isAsked, setAsked] = useState(false);
  const fields = useMemo(() => argumentFields(descriptor, tables, given), [descriptor, tables, given]);
  const isLarge = fields.some(
    ({ name, usual }) => (tables.cells.get(given[name] ?? usual)?.length ?? 0) > atOnce,
  );
  const settled = useDeferredValue(given);
  const answer = useMemo(
    () =>
      isLarge && !isAsked
        ? undefined
        : workOut(descriptor, argumentFields(descriptor, tables, settled), tables, settled),
    [descriptor, tables, settled, isLarge, isAsked],
  );
  const give = useCallback((name: string, text: string): void => {
    setGiven((before) => ({ ...before, [name]: text }));
    setAsked(false);
  }, []);
  return (
    <section className={styles.example} aria-label={`${descriptor.name} on this workbook`}>
      <h3 className={styles.heading}>On this workbook</h3>
      {fields.map(({ name, help, choices, offered, usual }) => {
        const value = given[name] ?? usual;
        return choices ? (
          <Choice
            key={name}
            label={name}
            value={value}
            options={
              choices.some(([each]) => each === value)
                ? choices
                : [[value, value === "" ? "nothing to choose" : value], ...choices]
            }
            onChoose={(chosen) => {
              give(name, chosen);
            }}
          />
        ) : (
          <TypedArgument key={name} {...{ name, help, value, offered, give }} />
        );
      })}
      {answer ? (
        <Answer descriptor={descriptor} answer={answer} />
      ) : (
        <Button
          className={styles.button}
          onClick={() => {
            setAsked(true);
          }}
        >
          Work it out
        </Button>
      )}
    </section>
  );
}

function TypedArgument(props: {
  readonly name: string;
  readonly help: string;
  readonly value: string;
  readonly offered: readonly string[];
  readonly give: (name: string, text: string) => void;
}): ReactNode {
  const styles = useStyles();
  const list = useId();
  const { name, help, value, offered, give } = props;
  return (
    <Field
      label={name}
      hint={
        offered.length > 0
          ? `${help} Several: with semicolons, or a column such as ${offered[0] ?? ""}.`
          : help
      }
    >
      <Input
        className={styles.field}
        value={value}
        autoComplete="off"
        {...(offered.length > 0 && { input: { list } })}
        onChange={(_, data) => {
          give(name, data.value);
        }}
      />
      {offered.length > 0 && (
        <datalist id={list}>
          {offered.map((each) => (
            <option key={each} value={each} />
          ))}
        </datalist>
      )}
    </Field>
  );
}

const shownRows = 12;
const shownColumns = 8;

function Answer(props: { readonly descriptor: FunctionDescriptor; readonly answer: LiveAnswer }): ReactNode {
  const styles = useStyles();
  const { descriptor, answer } = props;
  const { formula, result, failure } = answer;
  return (
    <>
      <p className={styles.text}>
        <code className={styles.code}>{formula}</code>
      </p>
      {failure !== undefined && <FailureBox what="It would show an error." why={failure} />}
      {result && <Result name={descriptor.name} result={result} />}
      {result && <Insert key={formula} name={descriptor.name} formula={formula} result={result} />}
    </>
  );
}

function Result({ name, result }: { readonly name: string; readonly result: Table }): ReactNode {
  const styles = useStyles();
  const [first = [], ...rows] = result;
  if (rows.length === 0 && first.length === 1)
    return (
      <p className={styles.text} aria-live="polite">
        gives <strong>{shown(first[0]) === "" ? "a blank" : shown(first[0])}</strong>
      </p>
    );
  const hasHeadings = rows.length > 0 && first.every((value) => typeof value === "string");
  const body = hasHeadings ? rows : result;
  const left = body.length - shownRows;
  const aside = first.length - shownColumns;
  return (
    <>
      <PlainTable
        label={`What ${name} gives`}
        headings={(hasHeadings ? first : first.map((_, i) => String(i + 1)))
          .slice(0, shownColumns)
          .map((value, i) => shown(value) || `(${String(i + 1)})`)}
        rows={body.slice(0, shownRows).map((row) => row.slice(0, shownColumns).map(shown))}
      />
      {(left > 0 || aside > 0) && (
        <p className={styles.text}>
          {[
            ...(left > 0 ? [count(left, "more row")] : []),
            ...(aside > 0 ? [count(aside, "more column")] : []),
          ].join(" and ")}
          {" in the sheet."}
        </p>
      )}
    </>
  );
}

function shown(value: unknown): string {
  return typeof value === "number" ? shownNumber(value) : String(value ?? "");
}

interface Place {
  readonly at: CellAddress;
  readonly rows: number;
  readonly columns: number;
  /** Filled cells where the result goes beside the first, by name. */
  readonly inTheWay: readonly string[];
  /** What the first cell holds now; empty for nothing. */
  readonly holds: string;
}

/** The formula into the selected cell, after saying what it fills and what stands there. */
function Insert(props: {
  readonly name: string;
  readonly formula: string;
  readonly result: Table;
}): ReactNode {
  const styles = useStyles();
  const { workbook, apply, say, working } = useSession();
  const { name, formula, result } = props;
  const [place, setPlace] = useState<Place>();
  const look = async (): Promise<void> => {
    setPlace(undefined);
    try {
      const at = await workbook.selectedCell();
      const size = { rows: result.length, columns: result[0]?.length ?? 1 };
      const { values } = await workbook.readArea({ ...at, ...size });
      const filled = values.flatMap((row, r) =>
        row.flatMap((cell, c) =>
          isBlank(cell)
            ? []
            : [{ cell, name: cellName(at.row + r, at.column + c), isFirst: r === 0 && c === 0 }],
        ),
      );
      setPlace({
        ...{ at, ...size },
        inTheWay: filled.filter(({ isFirst }) => !isFirst).map((each) => each.name),
        holds: filled.filter(({ isFirst }) => isFirst).map(({ cell }) => cellText(cell))[0] ?? "",
      });
      say(undefined);
    } catch (error) {
      say({ kind: "failed", text: failureText(error) });
    }
  };
  const insert = async ({ at, rows, columns }: Place): Promise<void> => {
    const cell = cellName(at.row, at.column);
    const isDone = await apply(
      `Insert ${name} into ${cell}`,
      [{ kind: "cells", at, cells: [[{ formula }]] }],
      {
        kind: "done",
        text: `${cell} of the sheet “${at.sheet}” holds the formula now.`,
      },
    );
    if (!isDone) return;
    setPlace(undefined);
    await workbook.select({ ...at, rows, columns }).catch(() => undefined);
  };
  const where = place && areaName({ ...place.at, ...place });
  return (
    <>
      <Button className={styles.button} disabledFocusable={working !== undefined} onClick={() => void look()}>
        Insert into the selected cell
      </Button>
      {place && (
        <div className={styles.example} role="group" aria-label="Where it goes" aria-live="polite">
          {place.inTheWay.length > 0 ? (
            <FailureBox
              what={`It would fill ${where ?? ""} of the sheet “${place.at.sheet}”, and something stands there already.`}
              why={`Filled: ${place.inTheWay.slice(0, 5).join(", ")}${place.inTheWay.length > 5 ? " and more" : ""}. Select a cell with ${count(place.rows, "empty row")} below and ${count(place.columns, "empty column")}, then press Insert again.`}
            />
          ) : (
            <>
              <p className={styles.text}>
                Fills {where} of the sheet “{place.at.sheet}”.
                {place.holds !== "" && ` What stands in its first cell, “${place.holds}”, is replaced.`}
              </p>
              <Button
                className={styles.button}
                appearance="primary"
                disabledFocusable={working !== undefined}
                onClick={() => void insert(place)}
              >
                Write it
              </Button>
            </>
          )}
        </div>
      )}
    </>
  );
}
