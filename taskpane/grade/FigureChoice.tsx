import type { ReactNode } from "react";
import { useMemo } from "react";
import { Choice } from "../ui/Choice.tsx";
import type { Chosen } from "../ui/chosenPlace.ts";

/** A choice among the figures of a chart; one that is not there any more stays in sight until another is chosen. */
export function FigureChoice(props: {
  readonly label: string;
  readonly names: readonly string[];
  readonly place: number | undefined;
  readonly chosen: Chosen | undefined;
  readonly onChoose: (chosen: Chosen) => void;
}): ReactNode {
  const { label, names, place, chosen, onChoose } = props;
  const options = useMemo(() => names.map((name, i) => [String(i), name] as const), [names]);
  const gone = place === undefined ? [["", `${chosen?.name ?? ""} (not in the chart)`] as const] : [];
  return (
    <Choice
      label={label}
      value={place === undefined ? "" : String(place)}
      options={[...gone, ...options]}
      onChoose={(value) => {
        const at = Number(value);
        if (value !== "") onChoose({ place: at, name: names[at] ?? "" });
      }}
    />
  );
}
