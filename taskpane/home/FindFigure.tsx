import { Button, Field, Input, makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useId, useMemo, useState } from "react";
import type { Chart } from "../../addin/chart/chart.ts";
import { figureKey } from "../../addin/chart/find.ts";
import type { TableInfo } from "../../addin/workbook/port.ts";
import { countVerdicts, wardrobeOf } from "../fit/ranking.ts";
import { VerdictWords } from "../fit/VerdictWords.tsx";
import { failureText } from "../shell/notice.ts";
import { useSession } from "../shell/session.ts";
import { card } from "../ui/boxes.ts";
import { count } from "../ui/words.ts";
import type { Worked } from "./WhatItSays.tsx";

const useStyles = makeStyles({
  card,
  name: { margin: 0, fontSize: "inherit", fontWeight: 600, overflowWrap: "anywhere" },
  text: { margin: 0, overflowWrap: "anywhere" },
  verdicts: {
    margin: 0,
    padding: 0,
    listStyleType: "none",
    display: "flex",
    flexWrap: "wrap",
    columnGap: "16px",
  },
  button: { alignSelf: "flex-start", marginTop: "4px" },
});

interface FindFigureProps extends Partial<Omit<Worked, "chart">> {
  readonly chart: Chart;
  readonly table: TableInfo;
}

/** A figure by its name: how well it is measured, who shares its body, what it can wear, and where it stands. */
export function FindFigure(props: FindFigureProps): ReactNode {
  const { chart } = props;
  const [wanted, setWanted] = useState("");
  const names = useId();
  const places = useMemo(() => placesOf(chart, wanted), [chart, wanted]);
  const nobody = wanted.trim() !== "" && places.length === 0;
  return (
    <>
      <Field
        label="Find a figure"
        hint={
          nobody
            ? `No figure of the chart has a name with “${wanted.trim()}” in it.`
            : places.length > 1
              ? `${count(places.length, "figure")} have that in their name. Go on typing.`
              : "Part of its name is enough."
        }
      >
        <Input
          type="search"
          input={{ list: names }}
          value={wanted}
          onChange={(_, data) => {
            setWanted(data.value);
          }}
        />
      </Field>
      <datalist id={names}>
        {[...new Set(chart.figures)].map((name) => (
          <option key={name} value={name} />
        ))}
      </datalist>
      {places.length === 1 && places[0] !== undefined && <FigureCard {...props} place={places[0]} />}
    </>
  );
}

/** Where the figure stands that is meant: by its whole name, else those with the text in their name. */
function placesOf({ figures }: Chart, wanted: string): readonly number[] {
  const key = figureKey(wanted);
  if (key === "") return [];
  const keys = figures.map(figureKey);
  const whole = keys.indexOf(key);
  if (whole >= 0) return [whole];
  return keys.flatMap((each, place) => (each.includes(key) ? [place] : []));
}

function FigureCard(props: FindFigureProps & { readonly place: number }): ReactNode {
  const styles = useStyles();
  const { workbook, say, goTo } = useSession();
  const { chart, table, flags, grouped, fitting, place } = props;
  const name = chart.figures[place] ?? "";
  const row = chart.rows[place] ?? 0;
  const taken = chart.measures.filter(({ mm }) => !Number.isNaN(mm[place])).length;
  const doubtful = flags?.filter((flag) => flag.row === row).length ?? 0;
  const group = grouped?.[place];
  const others = grouped?.filter((each, i) => i !== place && each.group === group?.group) ?? [];
  const wardrobe = useMemo(() => {
    if (!fitting || fitting.patterns.length === 0) return undefined;
    return countVerdicts(wardrobeOf(fitting, place).map(({ explanation }) => explanation.verdict));
  }, [fitting, place]);

  const show = (): void => {
    const { sheet, row: top, column } = table.area;
    workbook.select({ sheet, row: top + row, column, rows: 1, columns: 1 }).catch((error: unknown) => {
      say({ kind: "failed", text: failureText(error) });
    });
  };
  return (
    <section className={styles.card} aria-label={name}>
      <h2 className={styles.name}>{name}</h2>
      <p className={styles.text}>
        {taken} of {count(chart.measures.length, "measure")} taken
        {doubtful > 0 ? `, ${String(doubtful)} to look at again` : ""}.
      </p>
      {group && (
        <p className={styles.text}>
          {others.length === 0
            ? "Shares its body with no other figure of the chart."
            : `Shares its body with ${others.map(({ figure }) => figure).join(", ")}.`}
        </p>
      )}
      {wardrobe && (
        <>
          <p className={styles.text}>Of your patterns:</p>
          <ul className={styles.verdicts}>
            {wardrobe.map(({ verdict, count: times }) => (
              <li key={verdict}>
                {times} <VerdictWords verdict={verdict} />
              </li>
            ))}
          </ul>
        </>
      )}
      <Button className={styles.button} onClick={show}>
        Show it in the chart
      </Button>
      {doubtful > 0 && (
        <Button
          className={styles.button}
          onClick={() => {
            goTo("check");
          }}
        >
          Look at its readings
        </Button>
      )}
    </section>
  );
}
