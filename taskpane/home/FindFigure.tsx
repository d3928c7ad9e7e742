import { Field, Input } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useEffect, useId, useMemo, useState } from "react";
import type { Chart } from "../../addin/chart/chart.ts";
import { figureKey } from "../../addin/chart/find.ts";
import { FigureCard } from "../figure/FigureCard.tsx";
import type { FigureKnown } from "../figure/FigureCard.tsx";
import { useSession } from "../shell/session.ts";
import { count } from "../ui/words.ts";

/** A figure by its name: how well it is measured, who shares its body, what it can wear, and where it stands. */
export function FindFigure(props: FigureKnown): ReactNode {
  const { chart } = props;
  const { errand } = useSession();
  const [wanted, setWanted] = useState("");
  const [beside, setBeside] = useState<string>();
  const [asked, setAsked] = useState<object>();
  useEffect(() => {
    if (errand?.kind !== "figure" || !errand.about) return;
    setWanted(errand.about.figure);
    setBeside(errand.about.other);
    setAsked(errand);
  }, [errand]);
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
            setBeside(undefined);
            setAsked(undefined);
          }}
        />
      </Field>
      <datalist id={names}>
        {[...new Set(chart.figures)].map((name) => (
          <option key={name} value={name} />
        ))}
      </datalist>
      {places.length === 1 && places[0] !== undefined && (
        <FigureCard {...props} place={places[0]} beside={beside} onBeside={setBeside} asked={asked} />
      )}
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
