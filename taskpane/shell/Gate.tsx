import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import type { TableInfo } from "../../addin/workbook/port.ts";
import { failureText } from "./notice.ts";
import { OfferDemo } from "./OfferDemo.tsx";
import type { PrimaryAction } from "./SectionFrame.tsx";
import { SectionFrame } from "./SectionFrame.tsx";
import type { SectionKey } from "./sections.ts";
import { sectionTitles } from "./sections.ts";
import { useSession } from "./session.ts";
import type { Start } from "./start.ts";
import { readStart } from "./start.ts";
import { useRead } from "./useRead.ts";

const useStyles = makeStyles({
  text: { margin: 0, overflowWrap: "anywhere" },
  quiet: { margin: 0, color: tokens.colorNeutralForeground3 },
  actions: { display: "flex", flexWrap: "wrap", gap: "8px" },
});

/** What a section needs before it can answer anything, and what it answers then. */
interface Needs {
  /** Figures: a section that compares them needs two. With 0 only headings that nobody knows stand in the way. */
  readonly figures: 0 | 1 | 2;
  readonly answers: string;
}

const needs: Partial<Readonly<Record<SectionKey, Needs>>> = {
  home: { figures: 0, answers: "this page says what your workbook holds, and what to do next" },
  check: { figures: 1, answers: "readings that cannot be right are found" },
  groups: { figures: 2, answers: "you see who shares a body" },
  fit: { figures: 1, answers: "you see which pattern goes on whom" },
  grade: { figures: 2, answers: "you see how far each point of a pattern moves from one to the other" },
  publish: { figures: 1, answers: "a page for your buyers is made of it" },
};

/** Shows a section once the workbook has what it needs; before, what is lacking and the one thing to do. */
export function Gate(props: { readonly section: SectionKey; readonly children: ReactNode }): ReactNode {
  const needed = needs[props.section];
  return needed ? (
    <Guarded needed={needed} title={sectionTitles[props.section]}>
      {props.children}
    </Guarded>
  ) : (
    props.children
  );
}

function Guarded(props: {
  readonly needed: Needs;
  readonly title: string;
  readonly children: ReactNode;
}): ReactNode {
  const { needed, title, children } = props;
  const start = useRead(readStart, undefined);
  if (!start) return <SectionFrame title={title}>Looking at the workbook …</SectionFrame>;
  const isThere =
    start.kind === "figures" ||
    start.kind === "failed" ||
    (start.kind === "one figure" && needed.figures === 1) ||
    (start.kind !== "no measures" && needed.figures === 0);
  return isThere ? children : <NotYet start={start} title={title} answers={needed.answers} />;
}

function NotYet(props: {
  readonly start: Exclude<Start, { readonly kind: "figures" | "failed" }>;
  readonly title: string;
  readonly answers: string;
}): ReactNode {
  const styles = useStyles();
  const { goTo, workbook, say } = useSession();
  const { start, title, answers } = props;
  const show = ({ area }: TableInfo): void => {
    workbook.select({ ...area, rows: 1 }).catch((error: unknown) => {
      say({ kind: "failed", text: failureText(error) });
    });
  };
  const toImport = (
    <Button
      onClick={() => {
        goTo("import");
      }}
    >
      Import a list
    </Button>
  );
  const measure: PrimaryAction = {
    label: "Measure a figure",
    run: () => {
      goTo("measure");
    },
  };
  switch (start.kind) {
    case "no chart":
      return (
        <SectionFrame
          title={title}
          primary={{
            label: "Begin on Home",
            run: () => {
              goTo("home");
            },
          }}
        >
          <p className={styles.text}>There is no chart in the workbook yet. With one, {answers}.</p>
          <OfferDemo />
        </SectionFrame>
      );
    case "no figures":
      return (
        <SectionFrame title={title} primary={measure}>
          <p className={styles.text}>
            Your chart on the sheet “{start.table.area.sheet}” has no figures yet. With them, {answers}.
          </p>
          <div className={styles.actions}>{toImport}</div>
        </SectionFrame>
      );
    case "one figure":
      return (
        <SectionFrame title={title} primary={measure}>
          <p className={styles.text}>
            {start.figure} is the only figure of your chart so far. With a second one, {answers}.
          </p>
          <div className={styles.actions}>{toImport}</div>
        </SectionFrame>
      );
    case "no measures":
      return (
        <SectionFrame
          title={title}
          primary={{
            label: "Go to the headings",
            run: () => {
              show(start.table);
            },
          }}
        >
          <p className={styles.text}>
            Measure Book knows no measure among the headings of your chart: {namesOf(start.others)}.
          </p>
          <p className={styles.text}>
            Write over each one what the tape measures there, and the unit, such as Bust (mm), Waist (cm) or
            Inside leg (in). Then {answers}.
          </p>
          <p className={styles.quiet}>No reading is changed by that.</p>
        </SectionFrame>
      );
  }
}

const mostNames = 8;

function namesOf(headings: readonly string[]): string {
  const more = headings.length - mostNames;
  const names = headings.slice(0, mostNames).map((heading) => `“${heading}”`);
  return [...names, ...(more > 0 ? [`and ${String(more)} more`] : [])].join(", ");
}
