import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useState } from "react";
import type { Chart } from "../../addin/chart/chart.ts";
import { adultHeightMm } from "../../addin/grading/scale.ts";
import { Choice } from "../ui/Choice.tsx";
import { Disclosure } from "../ui/Disclosure.tsx";
import { PlainTable } from "../ui/PlainTable.tsx";
import { dartsView } from "./dartsView.ts";

const useStyles = makeStyles({
  text: { margin: 0, overflowWrap: "anywhere" },
  quiet: { margin: 0, color: tokens.colorNeutralForeground3 },
});

const counts = ["2", "4", "6", "8"] as const;
type Count = (typeof counts)[number];

/** What the darts of a garment take in on base and target, and whether that is sensible at their scale. */
export function DartsPart(props: {
  readonly chart: Chart;
  readonly garment: string;
  readonly figures: readonly number[];
}): ReactNode {
  const styles = useStyles();
  const { chart, garment, figures } = props;
  const [darts, setDarts] = useState<Count>("4");
  const views = dartsView(chart, garment, figures, Number(darts));
  return (
    <Disclosure title={`Darts of the ${garment.toLowerCase()}`} says={`${darts} over the whole body`}>
      <Choice
        label="Darts over the whole body"
        value={darts}
        options={counts.map((count) => [count, count] as const)}
        hint="4: one on each half front and half back."
        onChoose={setDarts}
      />
      {views.map(({ figure, says }) => (
        <p key={figure} className={styles.text}>
          {says}
        </p>
      ))}
      <PlainTable
        label={`Darts of the ${garment.toLowerCase()}`}
        headings={["Darts", ...views.map(({ figure }) => figure)]}
        rows={[
          ["To take in", ...views.map(({ difference }) => difference)],
          ["Half at the seams", ...views.map(({ atSeams }) => atSeams)],
          ["Darts to sew", ...views.map((view) => view.darts)],
          ["Each dart", ...views.map(({ intake }) => intake)],
          ["Widest that presses flat", ...views.map(({ widest }) => widest)],
        ]}
      />
      <p className={styles.quiet}>
        By the girths of the body, before ease. The widest dart is our own starting value, 32 mm at full size,
        made smaller by the height of the figure against {String(adultHeightMm)} mm.
      </p>
    </Disclosure>
  );
}
