import { Button, Select, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useMemo, useState } from "react";
import type { ImportFigure, TwinChoice, TwinChoices } from "../../addin/chart/import/figures.ts";
import { twinChoices } from "../../addin/chart/import/figures.ts";
import type { ImportKind } from "../../addin/chart/import/columns.ts";
import { Choice } from "../ui/Choice.tsx";
import { Disclosure } from "../ui/Disclosure.tsx";
import { count } from "../ui/words.ts";
import { plainList } from "../ui/boxes.ts";
import type { Nouns } from "./nouns.ts";
import { nouns } from "./nouns.ts";

const useStyles = makeStyles({
  group: { display: "flex", flexDirection: "column", gap: "8px", minWidth: 0 },
  list: { ...plainList, gap: "4px" },
  item: { display: "grid", gridTemplateColumns: "minmax(0, 1fr) 128px", gap: "8px", alignItems: "center" },
  name: { overflowWrap: "anywhere" },
  quiet: { color: tokens.colorNeutralForeground3 },
});

const words: Readonly<Record<TwinChoice, string>> = {
  skip: "Skip it",
  update: "Update it",
  "keep both": "Keep both",
};

const longWordsOf = ({ place, entry }: Nouns): Readonly<Record<TwinChoice, string>> => ({
  skip: `Skip: leave the ${place} as it is`,
  update: `Update: the file’s ${entry === "entry" ? "entries" : `${entry}s`} go over the old ones`,
  "keep both": "Keep both: add it under another name",
});

const pageSize = 50;

/** What to do with figures that are there already: for all, or one by one. Shown only where there are any. */
export function TwinList(props: {
  readonly what: ImportKind;
  readonly figures: readonly ImportFigure[];
  readonly twins: TwinChoices;
  readonly change: (twins: TwinChoices) => void;
}): ReactNode {
  const styles = useStyles();
  const { what, figures, twins, change } = props;
  const { one, many, place } = nouns[what];
  const inWords = longWordsOf(nouns[what]);
  const [shown, setShown] = useState(pageSize);
  const found = useMemo(() => figures.filter((f) => f.twin !== undefined), [figures]);
  const inChart = found.filter((f) => f.twin === "in the chart").length;
  const inFile = found.length - inChart;
  if (found.length === 0) return null;
  return (
    <div className={styles.group}>
      {inChart > 0 && (
        <Choice
          label={`${count(inChart, `${one} is`, `${many} are`)} in the ${place} already`}
          value={twins.inChart}
          options={twinChoices.map((choice) => [choice, inWords[choice]] as const)}
          onChoose={(choice) => {
            change({ inChart: choice, inFile: twins.inFile });
          }}
        />
      )}
      {inFile > 0 && (
        <Choice
          label={`${count(inFile, `${one} stands`, `${many} stand`)} in the file more than once`}
          value={twins.inFile}
          options={[
            ["keep both", "Keep both: number the later one"],
            ["update", "Update: the later row goes over the earlier"],
            ["skip", "Skip: only the first row counts"],
          ]}
          onChoose={(choice) => {
            change({ inChart: twins.inChart, inFile: choice });
          }}
        />
      )}
      <Disclosure title="Choose one by one">
        <ul className={styles.list}>
          {found.slice(0, shown).map((figure) => (
            <li key={figure.row} className={styles.item}>
              <span className={styles.name}>
                {figure.name}{" "}
                <span className={styles.quiet}>
                  {figure.twin === "in the chart" ? `in the ${place}` : figure.twin}
                </span>
              </span>
              <Select
                aria-label={`What to do with ${figure.name}`}
                value={choiceFor(figure, twins)}
                onChange={(_, { value }) => {
                  const choice = twinChoices.find((c) => c === value);
                  if (choice) change({ ...twins, byRow: new Map(twins.byRow).set(figure.row, choice) });
                }}
              >
                {twinChoices.map((choice) => (
                  <option key={choice} value={choice}>
                    {words[choice]}
                  </option>
                ))}
              </Select>
            </li>
          ))}
        </ul>
        {found.length > shown && (
          <Button
            onClick={() => {
              setShown(shown + pageSize);
            }}
          >
            Show more ({found.length - shown} left)
          </Button>
        )}
      </Disclosure>
    </div>
  );
}

function choiceFor(figure: ImportFigure, twins: TwinChoices): TwinChoice {
  return twins.byRow?.get(figure.row) ?? (figure.twin === "in the chart" ? twins.inChart : twins.inFile);
}
