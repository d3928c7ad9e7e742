import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { lazy, Suspense, useState } from "react";
import { areaName } from "../../addin/workbook/address.ts";
import type { Edit } from "../../addin/workbook/port.ts";
import { freeName } from "../shell/freeName.ts";
import { chartTable } from "../import/planEdits.ts";
import { failureText } from "../shell/notice.ts";
import { OfferDemo } from "../shell/OfferDemo.tsx";
import type { PrimaryAction } from "../shell/SectionFrame.tsx";
import { SectionFrame } from "../shell/SectionFrame.tsx";
import { useSession } from "../shell/session.ts";
import { useRead } from "../shell/useRead.ts";
import { card, plainList } from "../ui/boxes.ts";
import { FailureBox } from "../ui/FailureBox.tsx";
import { count } from "../ui/words.ts";
import type { Step } from "./facts.ts";
import type { Holding, SheetChart } from "./readHome.ts";
import { readHome } from "./readHome.ts";

const useStyles = makeStyles({
  text: { margin: 0 },
  quiet: { margin: 0, color: tokens.colorNeutralForeground3 },
  list: plainList,
  card,
  name: { fontWeight: 600 },
  actions: { display: "flex", flexWrap: "wrap", gap: "8px" },
  button: { alignSelf: "flex-start", marginTop: "4px" },
});

// What is worked out comes after the words that can be said at once.
const ChartFacts = lazy(async () => ({ default: (await import("./ChartFacts.tsx")).ChartFacts }));

/** What this workbook holds and what to do next. */
export function HomeSection(): ReactNode {
  const styles = useStyles();
  const session = useSession();
  const { goTo, ask } = session;
  const holding = useRead(readHome, undefined);
  const [step, setStep] = useState<Step>();
  const primary = ((): PrimaryAction | undefined => {
    switch (holding?.kind) {
      case "no chart":
        return {
          label: "Begin a chart",
          run: () => {
            ask("newChart");
          },
        };
      case "no figures":
        return {
          label: "Measure a figure",
          run: () => {
            goTo("measure");
          },
        };
      case "chart":
        return (
          step && {
            label: step.label,
            run: () => {
              if (step.asks) ask(step.asks);
              else goTo(step.to);
            },
          }
        );
      default:
        return undefined;
    }
  })();

  return (
    <SectionFrame title="Home" primary={primary}>
      {!holding && <p className={styles.text}>Looking at the workbook …</p>}
      {holding?.kind === "failed" && <FailureBox what="The workbook cannot be read." why={holding.why} />}
      {holding?.kind === "no chart" && <NoChart holding={holding} />}
      {holding?.kind === "no figures" && (
        <>
          <p className={styles.text}>
            Your chart has its headings and no figures yet. Measure the first one here, import a list that you
            have, or type into the sheet “{holding.table.area.sheet}”, one row a figure.
          </p>
          <OpenTheSheet holding={holding} />
        </>
      )}
      {holding?.kind === "chart" && (
        <Suspense fallback={<p className={styles.text}>Looking at the chart …</p>}>
          <ChartFacts
            table={holding.table}
            others={holding.others}
            isDemo={holding.isDemo}
            onStep={setStep}
          />
        </Suspense>
      )}
    </SectionFrame>
  );
}

function OpenTheSheet({
  holding,
}: {
  readonly holding: Extract<Holding, { kind: "no figures" }>;
}): ReactNode {
  const styles = useStyles();
  const { workbook, say, goTo } = useSession();
  const { sheet, row, column } = holding.table.area;
  const open = (): void => {
    workbook.select({ sheet, row: row + 1, column, rows: 1, columns: 1 }).catch((error: unknown) => {
      say({ kind: "failed", text: failureText(error) });
    });
  };
  return (
    <div className={styles.actions}>
      <Button
        onClick={() => {
          goTo("import");
        }}
      >
        Import a list
      </Button>
      <Button onClick={open}>Go to the first row</Button>
    </div>
  );
}

function whatChanges({ headings, area }: SheetChart): string {
  if (!headings) return "It becomes a table where it stands. No cell is moved or changed.";
  const row = areaName({ ...area, rows: 1 });
  const few = headings.slice(0, 4).map((heading) => `“${heading}”`);
  return `It becomes a table where it stands. A table has its headings in one row: they are written into ${row}, as ${few.join(", ")}${headings.length > few.length ? " …" : ""}. No other cell is changed.`;
}

function NoChart({ holding }: { readonly holding: Extract<Holding, { kind: "no chart" }> }): ReactNode {
  const styles = useStyles();
  const { apply, working, goTo, workbook, say } = useSession();
  const { found, tables, sheets } = holding;
  const use = async ({ area, figures, headings }: SheetChart): Promise<void> => {
    const name = freeName(chartTable, tables, "_");
    const written: readonly Edit[] = headings
      ? [{ kind: "cells", at: area, cells: [headings.map((value) => ({ value }))] }]
      : [];
    const done = await apply(
      `Use the sheet “${area.sheet}” as your chart`,
      [...written, { kind: "table", name, area }],
      {
        kind: "done",
        text: `The sheet “${area.sheet}” is your chart now: ${count(figures, "figure")}, in a table named ${name}.`,
      },
    );
    if (!done) return;
    await workbook.select({ ...area, rows: 1, columns: 1 }).catch((error: unknown) => {
      say({ kind: "failed", text: failureText(error) });
    });
  };
  return (
    <>
      <p className={styles.text}>
        {found.length > 0
          ? "There is a measurement chart here that Measure Book does not use yet."
          : `No measurement chart was found ${sheets.length === 1 ? `on the sheet “${sheets[0] ?? ""}”` : `on the ${String(sheets.length)} sheets of this workbook`}: the list of your figures, one row each, with what the tape says under headings in English or German.`}
      </p>
      {found.length > 0 && (
        <ul className={styles.list} aria-label="Charts on sheets">
          {found.map((chart) => (
            <li key={chart.area.sheet} className={styles.card}>
              <span className={styles.name}>Sheet “{chart.area.sheet}”</span>
              <span>
                {count(chart.figures, "figure")} and {count(chart.measures, "measure")}, in{" "}
                {areaName(chart.area)}.
              </span>
              {chart.leftOut > 0 && (
                <span>
                  ◆ {count(chart.leftOut, "row")} further down {chart.leftOut === 1 ? "looks" : "look"} like
                  figures too and {chart.leftOut === 1 ? "is" : "are"} not in it.
                </span>
              )}
              <span className={styles.quiet}>{whatChanges(chart)}</span>
              <Button
                className={styles.button}
                appearance="primary"
                disabledFocusable={working !== undefined}
                onClick={() => void use(chart)}
              >
                Use it as my chart
              </Button>
            </li>
          ))}
        </ul>
      )}
      <p className={styles.text}>
        Begin an empty chart, or bring a list that you have: a file, or rows copied from anywhere. Import
        reads lists with the measures down the side, too.
      </p>
      <Button
        className={styles.button}
        onClick={() => {
          goTo("import");
        }}
      >
        Import a list
      </Button>
      <OfferDemo />
    </>
  );
}
