import { Checkbox, makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import type { Chart } from "../../addin/chart/chart.ts";
import { Choice } from "../ui/Choice.tsx";
import { Disclosure } from "../ui/Disclosure.tsx";
import { count } from "../ui/words.ts";
import type { MeasuresFor } from "./countedMeasures.ts";
import { measuresForWords } from "./countedMeasures.ts";

const useStyles = makeStyles({ list: { display: "flex", flexDirection: "column" } });

const options = (["pieces", "body", "chosen"] as const).map((key) => [key, measuresForWords[key]] as const);

/** Which measures the print scale is judged by. */
export function WhatCounts(props: {
  readonly chart: Chart;
  readonly which: MeasuresFor;
  /** Keys of the columns that count now. */
  readonly counted: ReadonlySet<string>;
  readonly onWhich: (which: MeasuresFor) => void;
  readonly onChosen: (keys: ReadonlySet<string>) => void;
}): ReactNode {
  const styles = useStyles();
  const { chart, which, counted, onWhich, onChosen } = props;
  return (
    <Disclosure title="Measures that count" says={count(counted.size, "measure")}>
      <Choice label="For the print scale" value={which} options={options} onChoose={onWhich} />
      <div className={styles.list} role="group" aria-label="Measures">
        {chart.measures.map(({ key, heading }) => (
          <Checkbox
            key={key}
            label={heading}
            checked={counted.has(key)}
            onChange={(_, data) => {
              const next = new Set(counted);
              if (data.checked === true) next.add(key);
              else next.delete(key);
              onChosen(next);
            }}
          />
        ))}
      </div>
    </Disclosure>
  );
}
