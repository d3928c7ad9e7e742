import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useEffect, useState } from "react";
import type { WorkbookChange } from "../../addin/workbook/port.ts";
import { failureText } from "../shell/notice.ts";
import { useSession } from "../shell/session.ts";
import { card } from "../ui/boxes.ts";
import { meaning } from "../ui/theme.ts";
import { count } from "../ui/words.ts";
import type { Place, PlaceKind } from "./places.ts";
import {
  chosenPlaces,
  findPlaces,
  isSure,
  placeEdits,
  placesWords,
  samePlaces,
  sureKinds,
} from "./places.ts";
import { PlacesChoice } from "./PlacesChoice.tsx";
import type { Rename } from "./renames.ts";
import { useRenames } from "./useRenames.ts";

const useStyles = makeStyles({
  all: {
    flexShrink: 0,
    maxHeight: "60%",
    overflowY: "auto",
    ":not(:empty)": { padding: "8px", display: "flex", flexDirection: "column", gap: "8px" },
  },
  box: { ...card, gap: "8px", borderTopColor: meaning.chalk, overflowWrap: "anywhere" },
  text: { margin: 0 },
  name: { fontWeight: 600 },
  buttons: { display: "flex", flexWrap: "wrap", gap: "8px" },
  quiet: { margin: 0, color: tokens.colorNeutralForeground3 },
});

/**
 * Offers to change what still says the old name of a figure or pattern that was renamed in its table.
 *
 * @param heard all that was typed over another text since the pane was opened
 */
export function RenameBox({ heard }: { readonly heard: readonly WorkbookChange[] }): ReactNode {
  const styles = useStyles();
  const { renames, drop } = useRenames(heard);
  return (
    <div className={styles.all} role="status">
      {renames.map((rename) => (
        <Offer
          key={JSON.stringify(rename)}
          rename={rename}
          onDone={() => {
            drop(rename);
          }}
        />
      ))}
    </div>
  );
}

/** Nothing where nothing is sure to say the old name. */
function Offer(props: { readonly rename: Rename; readonly onDone: () => void }): ReactNode {
  const styles = useStyles();
  const { workbook, working, apply, say } = useSession();
  const { rename, onDone } = props;
  const [places, setPlaces] = useState<readonly Place[]>([]);
  const [chosen, setChosen] = useState<ReadonlySet<PlaceKind>>(sureKinds);
  // The whole workbook is read once, and again before anything is changed.
  useEffect(() => {
    let current = true;
    findPlaces(workbook, rename).then(
      (found) => {
        if (current) setPlaces(found);
      },
      (error: unknown) => {
        if (current) say({ kind: "failed", text: failureText(error) });
      },
    );
    return () => {
      current = false;
    };
  }, [workbook, rename, say]);

  const sure = places.filter(({ kind }) => isSure(kind));
  const closed = sure.filter((place) => place.closed !== undefined);
  if (sure.length === 0) return null;
  const before = rename.from.join(" or ");

  async function follow(): Promise<void> {
    try {
      const now = await findPlaces(workbook, rename);
      if (!samePlaces(now, places)) {
        setPlaces(now);
        say({ kind: "failed", text: "The workbook changed meanwhile. Look at the places again." });
        return;
      }
    } catch (error) {
      say({ kind: "failed", text: failureText(error) });
      return;
    }
    const changes = chosenPlaces(places, chosen);
    const isDone = await apply(
      `Change “${before}” to “${rename.to}” in ${count(changes.length, "place")}`,
      placeEdits(changes),
      { kind: "done", text: `Changed to ${rename.to}: ${placesWords(changes)}.` },
    );
    if (isDone) onDone();
  }

  return (
    <section className={styles.box} aria-label={`${before} was renamed`}>
      <p className={styles.text}>
        You renamed <span className={styles.name}>{before}</span> to{" "}
        <span className={styles.name}>{rename.to}</span>. {capital(placesWords(sure))} still{" "}
        {sure.length === 1 ? "says" : "say"} {before}.
      </p>
      {closed.length > 0 && (
        <p className={styles.quiet}>
          {count(closed.length, "place")} of them cannot be changed now, see below.
        </p>
      )}
      <div className={styles.buttons}>
        <Button
          appearance="primary"
          disabledFocusable={working !== undefined || chosenPlaces(places, chosen).length === 0}
          onClick={() => void follow()}
        >
          Change them too
        </Button>
        <Button
          onClick={() => {
            say({ kind: "done", text: `${before} stays as it is in ${count(sure.length, "place")}.` });
            onDone();
          }}
        >
          Leave them
        </Button>
      </div>
      <PlacesChoice places={places} chosen={chosen} onChoose={setChosen} />
    </section>
  );
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
