import { Button, makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useState } from "react";
import { plainList } from "../ui/boxes.ts";
import type { Chosen } from "../ui/chosenPlace.ts";
import { Disclosure } from "../ui/Disclosure.tsx";
import { count } from "../ui/words.ts";
import { FigureChoice } from "./FigureChoice.tsx";

const useStyles = makeStyles({
  text: { margin: 0 },
  button: { alignSelf: "flex-start" },
  list: plainList,
  entry: { display: "flex", alignItems: "center", justifyContent: "space-between", gap: "8px" },
  name: { overflowWrap: "anywhere", minWidth: 0 },
});

/** Further targets, for a run of figures from one base. */
export function MoreTargets(props: {
  readonly names: readonly string[];
  /** The places that cannot be added: base and first target. */
  readonly taken: readonly number[];
  /** Places of the further targets. */
  readonly more: readonly number[];
  readonly onChange: (more: readonly Chosen[]) => void;
}): ReactNode {
  const styles = useStyles();
  const { names, taken, more, onChange } = props;
  const [next, setNext] = useState<Chosen>();
  const free = [...names.keys()].filter((place) => !taken.includes(place) && !more.includes(place));
  const freeNames = free.map((place) => names[place] ?? "");
  const at = Math.max(0, next ? freeNames.indexOf(next.name) : 0);
  const all = (places: readonly number[]): readonly Chosen[] =>
    places.map((place) => ({ place, name: names[place] ?? "" }));
  return (
    <Disclosure title="More targets" says={more.length === 0 ? "none" : count(more.length, "figure")}>
      <p className={styles.text}>
        With several targets the steps from figure to figure are shown in one table below.
      </p>
      {more.length > 0 && (
        <ul className={styles.list} aria-label="Further targets">
          {more.map((place) => (
            <li key={place} className={styles.entry}>
              <span className={styles.name}>{names[place]}</span>
              <Button
                size="small"
                aria-label={`Leave out ${names[place] ?? ""}`}
                onClick={() => {
                  onChange(all(more.filter((each) => each !== place)));
                }}
              >
                Leave out
              </Button>
            </li>
          ))}
        </ul>
      )}
      {free.length > 0 && (
        <>
          <FigureChoice
            label="Another target"
            names={freeNames}
            place={at}
            chosen={next}
            onChoose={setNext}
          />
          <Button
            className={styles.button}
            onClick={() => {
              const place = free[at];
              if (place !== undefined) onChange(all([...more, place]));
            }}
          >
            Add this target
          </Button>
        </>
      )}
    </Disclosure>
  );
}
