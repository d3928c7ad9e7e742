import { makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { lazy, Suspense, useEffect, useMemo, useState } from "react";
import { measuresTaken } from "../../addin/chart/chart.ts";
import type { Match } from "../../addin/fit/match.ts";
import type { TableInfo } from "../../addin/workbook/port.ts";
import { useCheck } from "../check/useCheck.ts";
import { useFit } from "../fit/useFit.ts";
import { useMatch } from "../fit/useMatch.ts";
import type { Fit } from "../fit/readFit.ts";
import { bodiesIn } from "../groups/bodies.ts";
import type { GroupsInput } from "../groups/readGroups.ts";
import type { Since } from "../publish/sinceWords.ts";
import { historyKey } from "../publish/sinceWords.ts";
import { failureText } from "../shell/notice.ts";
import { useSession } from "../shell/session.ts";
import { card } from "../ui/boxes.ts";
import { OpenList } from "../ui/OpenList.tsx";
import { SignedWords } from "../ui/SignedWords.tsx";
import type { Fact, Known, Step, Worked } from "./facts.ts";
import { bodiesOf, factsOf, nextStep, wearOf } from "./facts.ts";

const useStyles = makeStyles({
  text: { margin: 0 },
  card,
  next: { margin: 0, fontWeight: 600 },
});

/** Every table as it is found; kept, since another object would be read anew. */
const usual = {};

// Comes only where something was published: what is published has to be worked out for it.
const ChangedSince = lazy(async () => ({
  default: (await import("../publish/ChangedSince.tsx")).ChangedSince,
}));

/** The next step, and a line for each thing that the workbook says. */
export function WhatItSays(props: {
  readonly groups: GroupsInput;
  readonly table: TableInfo;
  readonly onStep: (step: Step | undefined) => void;
  readonly onWorked: (worked: Worked) => void;
}): ReactNode {
  const styles = useStyles();
  const { groups, table, onStep, onWorked } = props;
  const { workbook, book, goTo, say } = useSession();
  const { check } = useCheck(undefined);
  const fit = useFit(usual);
  const { match } = useMatch(fit?.fitting);
  const grouped = groups.figures ? book.once(bodiesIn, groups.figures) : groups.failure;
  const chart = groups.figures?.chart;
  const isPublished = useIsPublished();
  const [since, setSince] = useState<Since>();

  const known = useMemo(
    (): Known | undefined =>
      chart && {
        figures: chart.figures.length,
        measures: measuresTaken(chart).length,
        toLookAt: check && (check.failure ?? check.checked?.flags.length ?? 0),
        bodies: typeof grouped === "object" ? bodiesOf(grouped) : grouped,
        ...{ wear: wearIn(fit, match), since },
      },
    [chart, check, grouped, fit, match, since],
  );
  const step = useMemo(() => known && nextStep(known), [known]);
  useEffect(() => {
    onStep(step);
  }, [step, onStep]);

  const flags = check?.checked?.flags;
  const fitting = fit?.fitting;
  useEffect(() => {
    if (chart)
      onWorked({ chart, flags, grouped: typeof grouped === "object" ? grouped : undefined, fitting });
  }, [chart, flags, grouped, fitting, onWorked]);

  const open = ({ to }: Fact): void => {
    if (to) {
      goTo(to);
      return;
    }
    const { sheet, row, column } = table.area;
    workbook.select({ sheet, row, column, rows: 1, columns: 1 }).catch((error: unknown) => {
      say({ kind: "failed", text: failureText(error) });
    });
  };

  return (
    <>
      {step && (
        <section className={styles.card} aria-label="Next">
          <p className={styles.next}>Next</p>
          <p className={styles.text}>{step.why}</p>
        </section>
      )}
      {isPublished && (
        <Suspense fallback={null}>
          <ChangedSince onFound={setSince} />
        </Suspense>
      )}
      {groups.failure !== undefined && <p className={styles.text}>{groups.failure}</p>}
      {known && (
        <OpenList
          label="What this workbook says"
          items={factsOf(known, table.area.sheet)}
          keyOf={({ to }) => to ?? "chart"}
          rowOf={({ name, sign, tone, says, words }) => ({
            name,
            says: says !== "" && (
              <SignedWords sign={sign} tone={tone}>
                {says}
              </SignedWords>
            ),
            words: words === "" ? undefined : words,
          })}
          onOpen={open}
        />
      )}
    </>
  );
}

/** Whether the workbook remembers a publication; a preference that cannot be read is none. */
function useIsPublished(): boolean {
  const { workbook, book, isShown } = useSession();
  const [isPublished, setPublished] = useState(false);
  useEffect(() => {
    if (!isShown) return undefined;
    let current = true;
    workbook.preference(historyKey).then(
      (kept) => {
        if (current) setPublished(kept !== undefined);
      },
      () => undefined,
    );
    return () => {
      current = false;
    };
  }, [workbook, book, isShown]);
  return isPublished;
}

function wearIn(fit: Fit | undefined, match: Match | undefined): Known["wear"] {
  if (!fit) return undefined;
  if (fit.failure !== undefined) return { why: fit.failure };
  if (!fit.used.patterns || (fit.fitting?.patterns.length === 0 && fit.problems.length === 0)) return "none";
  return match && wearOf(match, fit.problems.length);
}
