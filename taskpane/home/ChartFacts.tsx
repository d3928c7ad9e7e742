import { Button, makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { lazy, Suspense, useEffect, useState } from "react";
import type { TableInfo, Workbook } from "../../addin/workbook/port.ts";
import { readGroups } from "../groups/readGroups.ts";
import { useSession } from "../shell/session.ts";
import { useRead } from "../shell/useRead.ts";
import type { Step, Worked } from "./facts.ts";
import { FindFigure } from "./FindFigure.tsx";

const useStyles = makeStyles({ text: { margin: 0 }, add: { alignSelf: "flex-start" } });

/** Every table as it is found; kept, since another object would be read anew. */
const usual = {};

// What is checked, grouped and matched for it comes after the figures can be looked for.
const WhatItSays = lazy(async () => ({ default: (await import("./WhatItSays.tsx")).WhatItSays }));

/** A workbook with a chart: what it says, the next step first, and its figures to be looked for. */
export function ChartFacts(props: {
  readonly table: TableInfo;
  readonly others: readonly TableInfo[];
  readonly isDemo: boolean;
  readonly onStep: (step: Step | undefined) => void;
}): ReactNode {
  const styles = useStyles();
  const { table, others, isDemo, onStep } = props;
  const { workbook, ask } = useSession();
  const groups = useRead(readGroups, usual);
  const isReady = useIsReady(workbook);
  const [worked, setWorked] = useState<Worked>();
  const looking = <p className={styles.text}>Looking at the chart …</p>;
  const chart = groups?.figures?.chart;
  return (
    <>
      {isDemo && (
        <p className={styles.text}>
          This is the demo: its maker, figures and patterns are invented, and some slips are left in it for
          you to find. Your own chart is best begun in a workbook of its own.
        </p>
      )}
      {others.length > 0 && (
        <p className={styles.text}>
          There {others.length === 1 ? "is another chart" : "are other charts"} in this workbook,{" "}
          {others.map(({ name, area }) => `${name} on the sheet “${area.sheet}”`).join(", ")}. What stands
          here is of {table.name}; Check, Groups, Fit and Grade let you choose.
        </p>
      )}
      {groups && isReady ? (
        <Suspense fallback={looking}>
          <WhatItSays groups={groups} table={table} onStep={onStep} onWorked={setWorked} />
        </Suspense>
      ) : (
        looking
      )}
      <Button
        className={styles.add}
        onClick={() => {
          ask("newPattern");
        }}
      >
        Add a pattern
      </Button>
      {chart && (
        <FindFigure
          chart={chart}
          table={table}
          toGroup={groups.figures}
          {...(worked?.chart === chart && worked)}
        />
      )}
    </>
  );
}

/** False while the workbook is still being opened: what is worked out meanwhile would keep the sheet waiting. */
function useIsReady(workbook: Workbook): boolean {
  const [ready, setReady] = useState<Workbook>();
  useEffect(() => {
    let current = true;
    void workbook.whenReady?.().then(() => {
      if (current) setReady(workbook);
    });
    return () => {
      current = false;
    };
  }, [workbook]);
  return !workbook.whenReady || ready === workbook;
}
