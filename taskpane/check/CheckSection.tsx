import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useEffect, useRef, useState } from "react";
import { measuresTaken } from "../../addin/chart/chart.ts";
import type { Flag } from "../../addin/checking/checkChart.ts";
import { fewestFigures, fewestMeasures } from "../../addin/checking/proportions.ts";
import type { CellAddress, Edit, Workbook } from "../../addin/workbook/port.ts";
import { Choice } from "../ui/Choice.tsx";
import { ReadingsPart } from "../readings/ReadingsPart.tsx";
import { RenamePart } from "../rename/RenamePart.tsx";
import { FailureBox } from "../ui/FailureBox.tsx";
import { chartTables } from "../shell/chartTables.ts";
import { tableAt } from "../explain/explainCell.ts";
import { failureText } from "../shell/notice.ts";
import { SectionFrame } from "../shell/SectionFrame.tsx";
import { useSession } from "../shell/session.ts";
import { WorkingWords } from "../work/Working.tsx";
import { count, isoDay } from "../ui/words.ts";
import { confirm, confirmationOf, confirmedWords, takeBack } from "./confirmed.ts";
import { ConfirmedList } from "./ConfirmedList.tsx";
import { FlagCard, choiceLabel, correctionLabel } from "./FlagCard.tsx";
import { correctionsTable, withCorrections } from "./corrections.ts";
import { areaOfFlag, cellOfFlag, choose, correct } from "./flagEdits.ts";
import { groupFlags } from "./flagGroups.ts";
import type { CheckedChart } from "./useCheck.ts";
import { useCheck } from "./useCheck.ts";
import { plainList } from "../ui/boxes.ts";

const useStyles = makeStyles({
  text: { margin: 0 },
  groups: { display: "flex", flexDirection: "column", gap: "16px", outlineStyle: "none" },
  group: { display: "flex", flexDirection: "column", gap: "8px" },
  figure: {
    margin: 0,
    fontSize: tokens.fontSizeBase400,
    lineHeight: tokens.lineHeightBase400,
    fontWeight: 600,
  },
  list: plainList,
  aside: { alignSelf: "flex-start" },
});

/** Groups shown at first and added by “Show more”. */
const pageSize = 30;

/** What in the chart deserves a second look; nothing is changed without the user. */
export function CheckSection(): ReactNode {
  const styles = useStyles();
  const session = useSession();
  const { workbook, working, apply, say, errand, ask } = session;
  const [chosen, setChosen] = useState<string>();
  const [shown, setShown] = useState(pageSize);
  const [marked, setMarked] = useState<readonly CellAddress[]>([]);
  const { check, working: checking, figures } = useCheck(chosen);
  // While the next check is worked out, the readings may stand elsewhere already.
  const isBusy = working !== undefined || checking.isWorking;
  const checked = check?.checked;
  const list = useRef<HTMLDivElement>(null);
  const focusNext = useFocusNext(list, checked?.flags);

  // “This chart” is the one that the selected cell is in; where it is in none, the usual one.
  useEffect(() => {
    if (errand?.kind !== "check") return;
    let current = true;
    selectedChart(workbook).then(
      (name) => {
        if (current && name !== undefined) setChosen(name);
      },
      () => undefined,
    );
    return () => {
      current = false;
    };
  }, [workbook, errand]);

  async function change(at: number, label: string, edits: readonly Edit[], done: string): Promise<void> {
    focusNext(at);
    await apply(label, edits, { kind: "done", text: done });
  }

  function use(checked: CheckedChart, flag: Flag): void {
    take(checked, flag, correctionLabel(flag), correct(checked.data, checked.chart, flag));
  }

  function take(checked: CheckedChart, flag: Flag, what: string, edits: readonly Edit[]): void {
    const where = [flag.figure, flag.measure].filter((text) => text !== "").join(", ");
    const kept = withCorrections(edits, checked, flag, isoDay(new Date()), {
      table: check?.corrections?.table,
      cells: check?.corrections?.data.values ?? [],
      sheets: check?.sheets ?? [],
    });
    void change(
      checked.flags.indexOf(flag),
      `${what}: ${where}`,
      kept,
      `${where}: ${what.toLowerCase()}. What stood there is kept in the table ${correctionsTable}.`,
    );
  }

  function keep({ data, flags }: CheckedChart, flag: Flag): void {
    const row = confirmationOf(flag, data.values[flag.row]?.[flag.column]);
    const where = confirmedWords(row);
    const edits = confirm(row, isoDay(new Date()), {
      table: check?.confirmations?.table,
      cells: check?.confirmations?.data.values ?? [],
      sheets: check?.sheets ?? [],
    });
    const unmark: Edit = { kind: "mark", cells: [cellOfFlag(data, flag)], marked: false };
    void change(
      flags.indexOf(flag),
      `Confirm ${where}`,
      [...edits, unmark],
      `Remembered as right: ${where}. It comes back only when the reading changes.`,
    );
  }

  async function markAll({ data, flags }: CheckedChart): Promise<void> {
    const cells = cellsOf(flags.map((flag) => cellOfFlag(data, flag)));
    const label = `Mark ${count(cells.length, "cell")}`;
    const text = `${count(cells.length, "cell is", "cells are")} marked in the chart.`;
    if (await apply(label, [{ kind: "mark", cells, marked: true }], { kind: "done", text }))
      setMarked(cellsOf([...marked, ...cells]));
  }

  async function unmarkAll({ data, flags }: CheckedChart): Promise<void> {
    const cells = cellsOf([...marked, ...flags.map((flag) => cellOfFlag(data, flag))]);
    const done = { kind: "done", text: "The marks are taken away." } as const;
    if (await apply("Take the marks away", [{ kind: "mark", cells, marked: false }], done)) setMarked([]);
  }

  async function show(data: CheckedChart["data"], flag: Flag): Promise<void> {
    try {
      await workbook.select(areaOfFlag(data, flag));
    } catch (error) {
      say({ kind: "failed", text: failureText(error) });
    }
  }

  const primary =
    checked && checked.flags.length > 0
      ? {
          label: `Mark ${count(cellsOf(checked.flags.map((flag) => cellOfFlag(checked.data, flag))).length, "cell")}`,
          run: () => void markAll(checked),
        }
      : undefined;
  const groups = groupFlags(checked?.flags ?? []);
  return (
    <SectionFrame title="Check" primary={primary}>
      {!check && !checking.isWorking && !checking.isCancelled && (
        <p className={styles.text}>Checking the chart …</p>
      )}
      {checking.failure === undefined && (
        <WorkingWords working={checking} doing={`Checking ${count(figures, "figure")}`} />
      )}
      {check && check.tables.length > 1 && (
        <Choice
          label="Chart"
          value={checked?.table.name ?? chosen ?? ""}
          options={check.tables.map((t) => [t.name, `Table ${t.name} on sheet ${t.area.sheet}`] as const)}
          onChoose={(name) => {
            setShown(pageSize);
            setChosen(name);
          }}
        />
      )}
      {check?.failure !== undefined && <FailureBox what="Cannot be checked." why={check.failure} />}
      {checked && <p className={styles.text}>{summary(checked)}</p>}
      {checked && (
        <Button
          className={styles.aside}
          onClick={() => {
            ask("explain");
          }}
        >
          Explain the selected cell
        </Button>
      )}
      <div ref={list} className={styles.groups} tabIndex={-1}>
        {checked &&
          groups.slice(0, shown).map((group) => (
            <section key={`${String(group.row)} ${group.figure}`} className={styles.group}>
              <h2 className={styles.figure}>{group.figure || "Whole columns"}</h2>
              <ul className={styles.list}>
                {group.flags.map((flag) => (
                  <FlagCard
                    key={`${String(flag.row)} ${String(flag.column)} ${flag.kind} ${flag.why}`}
                    flag={flag}
                    cell={checked.data.values[flag.row]?.[flag.column]}
                    measure={checked.chart.measures.find(({ position }) => position === flag.column)?.measure}
                    disabled={isBusy}
                    onSelect={() => void show(checked.data, flag)}
                    onUse={() => {
                      use(checked, flag);
                    }}
                    onChoose={(choice) => {
                      take(
                        checked,
                        flag,
                        choiceLabel(choice),
                        choose(checked.data, checked.chart, flag, choice),
                      );
                    }}
                    onConfirm={() => {
                      keep(checked, flag);
                    }}
                  />
                ))}
              </ul>
            </section>
          ))}
      </div>
      {groups.length > shown && (
        <Button
          onClick={() => {
            setShown(shown + pageSize);
          }}
        >
          Show more figures ({groups.length - shown} left)
        </Button>
      )}
      {checked && (checked.flags.length > 0 || marked.length > 0) && (
        <Button className={styles.aside} disabledFocusable={isBusy} onClick={() => void unmarkAll(checked)}>
          Take the marks away
        </Button>
      )}
      {check && (
        <ConfirmedList
          confirmed={check.confirmed}
          disabled={isBusy}
          onTakeBack={(row) => {
            const table = check.confirmations?.table;
            if (!table) return;
            const text = `${confirmedWords(row)}: will be checked again.`;
            void apply(`Check again: ${confirmedWords(row)}`, takeBack(row, table), {
              kind: "done",
              text,
            });
          }}
        />
      )}
      {checked && <ReadingsPart chart={checked.chart} table={checked.table} />}
      {check && <RenamePart />}
    </SectionFrame>
  );
}

async function selectedChart(workbook: Workbook): Promise<string | undefined> {
  const { area } = await workbook.readSelection();
  return tableAt(chartTables(await workbook.tables()), area)?.name;
}

/** After a flag is dealt with it goes from the list; the focus goes to the one that takes its place. */
function useFocusNext(
  list: React.RefObject<HTMLDivElement | null>,
  flags: readonly Flag[] | undefined,
): (at: number) => void {
  const waiting = useRef<number>(undefined);
  useEffect(() => {
    if (waiting.current === undefined || !list.current) return;
    const cards = list.current.querySelectorAll<HTMLElement>("[data-flag]");
    (cards[Math.min(waiting.current, cards.length - 1)] ?? list.current).focus();
    waiting.current = undefined;
  }, [list, flags]);
  return (at) => {
    waiting.current = at;
  };
}

function summary({ table, chart, flags }: CheckedChart): string {
  const looked = `${count(chart.figures.length, "figure")} and ${count(measuresTaken(chart).length, "measure")} of the table ${table.name} checked.`;
  const isSmall = chart.figures.length < fewestFigures || measuresTaken(chart).length < fewestMeasures;
  return flags.length === 0
    ? `✓ ${looked} Nothing looks wrong.${isSmall ? ` Small slips are found from ${String(fewestFigures)} figures and ${String(fewestMeasures)} measures on, when figures can be held against one another.` : ""}`
    : `${looked} ${count(flags.length, "thing deserves", "things deserve")} a look${flags.length === 1 ? "" : ", worst first"}. Choose a reading to see it in the chart.`;
}

/** Every cell once. */
function cellsOf(cells: readonly CellAddress[]): readonly CellAddress[] {
  return [
    ...new Map(
      cells.map((cell) => [`${cell.sheet} ${String(cell.row)} ${String(cell.column)}`, cell]),
    ).values(),
  ];
}
