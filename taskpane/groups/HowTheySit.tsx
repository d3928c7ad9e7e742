import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useMemo, useState } from "react";
import { mean } from "simple-statistics";
import type { Chart } from "../../addin/chart/chart.ts";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import type { GroupSilhouette } from "../../addin/similarity/silhouette.ts";
import { Disclosure } from "../ui/Disclosure.tsx";
import { PlainTable } from "../ui/PlainTable.tsx";
import { ShowMore } from "../ui/ShowMore.tsx";
import { count } from "../ui/words.ts";
import { seatsOf, seatsWords, seatWords } from "./seats.ts";
import { figureAt } from "./sharing.ts";
import type { JobAnswer } from "../work/job.ts";
import { useJob } from "../work/useJob.ts";
import { shownTimes, sizesOf } from "./words.ts";
import { WorkingWords } from "../work/Working.tsx";

const useStyles = makeStyles({
  text: { margin: 0 },
  quiet: { margin: 0, color: tokens.colorNeutralForeground3 },
});

/** Rows shown at first and added by “Show more”. */
const pageSize = 20;

/** How well each figure sits in its group: worked out when it is opened, since it takes all pairs of figures. */
export function HowTheySit(props: {
  readonly chart: Chart;
  readonly columns: readonly ComparedColumn[];
  /** The group of each figure, in the order of the chart. */
  readonly groupOf: Int32Array;
}): ReactNode {
  const styles = useStyles();
  const { chart, columns, groupOf } = props;
  const [isOpen, setOpen] = useState(false);
  const sizes = useMemo(() => sizesOf(groupOf), [groupOf]);
  const canTell = sizes.length > 1 && sizes.some((size) => size > 1);
  const job = useMemo(
    () => (isOpen && canTell ? { kind: "seats" as const, chart, columns, groupOf } : undefined),
    [isOpen, canTell, chart, columns, groupOf],
  );
  const working = useJob(job, silhouetteIn);
  return (
    <Disclosure title="How well each figure sits in its group" onToggle={setOpen}>
      {!canTell && (
        <p className={styles.text}>
          {sizes.length > 1
            ? "Every figure stands alone."
            : "There is one group only, and so no other that a figure could be nearer to."}
        </p>
      )}
      {job && (
        <WorkingWords
          working={working}
          doing={`Comparing ${count(chart.figures.length, "figure")} with all groups`}
        />
      )}
      {working.answer && <Seats chart={chart} groupOf={groupOf} silhouette={working.answer} />}
    </Disclosure>
  );
}

function Seats(props: {
  readonly chart: Chart;
  readonly groupOf: Int32Array;
  readonly silhouette: GroupSilhouette;
}): ReactNode {
  const styles = useStyles();
  const { chart, groupOf, silhouette } = props;
  const [shown, setShown] = useState(pageSize);
  const seats = useMemo(() => seatsOf(chart, groupOf, silhouette), [chart, groupOf, silhouette]);
  const rows = seats.map((seat) => [
    figureAt(chart, seat.place),
    String(seat.group),
    seatWords(chart, groupOf, seat),
    Number.isNaN(seat.width) ? "" : shownTimes(seat.width),
  ]);
  const known = seats.map(({ width }) => width).filter((width) => !Number.isNaN(width));
  return (
    <>
      <p className={styles.text}>{seatsWords(seats)} Those that sit worst come first.</p>
      <PlainTable
        label="How well each figure sits in its group"
        headings={["Figure", "Group", "How it sits", "Number"]}
        rows={rows.slice(0, shown)}
        all={rows}
        wordy={[2]}
      />
      <ShowMore
        what="figures"
        left={seats.length - shown}
        onMore={() => {
          setShown(shown + pageSize);
        }}
      />
      <p className={styles.quiet}>
        The number is 1 for a figure that is far from all other groups, 0 for one that is as near to another
        group as to its own, and below 0 for one that is nearer to another; another figure that stands alone
        counts as a group too. Technical name: silhouette
        {known.length > 0 ? `; the mean of these figures is ${shownTimes(mean(known))}` : ""}.
      </p>
    </>
  );
}

function silhouetteIn(answer: JobAnswer): GroupSilhouette | undefined {
  return answer.kind === "seats" ? answer.silhouette : undefined;
}
