import type { ReactNode } from "react";
import { useMemo } from "react";
import { Choice } from "./Choice.tsx";

/** A choice among the rows of a table, by place: two rows of one name stay two. */
export function PlaceChoice(props: {
  readonly label: string;
  readonly names: readonly string[];
  readonly place: number;
  readonly onChoose: (place: number) => void;
}): ReactNode {
  const { label, names, place, onChoose } = props;
  const options = useMemo(() => names.map((name, i) => [String(i), name] as const), [names]);
  return (
    <Choice
      label={label}
      value={String(place)}
      options={options}
      onChoose={(value) => {
        onChoose(Number(value));
      }}
    />
  );
}
