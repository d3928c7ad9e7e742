import { Button, Checkbox, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useState } from "react";
import type { Workbook } from "../../addin/workbook/port.ts";
import { failureText } from "../shell/notice.ts";
import { useSession } from "../shell/session.ts";
import { plainList } from "../ui/boxes.ts";
import { Disclosure } from "../ui/Disclosure.tsx";
import { ShowMore } from "../ui/ShowMore.tsx";
import type { Place, PlaceKind } from "./places.ts";
import { chosenPlaces, kindWords, placeKinds, placeName } from "./places.ts";

const useStyles = makeStyles({
  list: plainList,
  places: { ...plainList, gap: "4px", paddingLeft: "32px" },
  place: { overflowWrap: "anywhere" },
  cell: { minWidth: 0, padding: "0 4px", fontWeight: "normal" },
  quiet: { color: tokens.colorNeutralForeground3 },
});

/** The places that say an old name, by kind: each kind can be left as it is, each place be looked at. */
export function PlacesChoice(props: {
  readonly places: readonly Place[];
  readonly chosen: ReadonlySet<PlaceKind>;
  readonly onChoose: (chosen: ReadonlySet<PlaceKind>) => void;
}): ReactNode {
  const styles = useStyles();
  const { places, chosen, onChoose } = props;
  return (
    <Disclosure title="See the places" says={placesLeftWords(places, chosen)}>
      <ul className={styles.list}>
        {placeKinds.map((kind) => {
          const own = places.filter((place) => place.kind === kind);
          if (own.length === 0) return null;
          return (
            <li key={kind}>
              <Checkbox
                label={kindWords[kind](own.length)}
                checked={chosen.has(kind)}
                onChange={(_, { checked }) => {
                  onChoose(
                    new Set(
                      placeKinds.filter((each) => (each === kind ? checked === true : chosen.has(each))),
                    ),
                  );
                }}
              />
              <PlaceList places={own} />
            </li>
          );
        })}
      </ul>
    </Disclosure>
  );
}

/** Places of a kind shown at first and added by “Show more”. */
const pageSize = 10;

function PlaceList({ places }: { readonly places: readonly Place[] }): ReactNode {
  const styles = useStyles();
  const { workbook, say } = useSession();
  const [shown, setShown] = useState(pageSize);
  return (
    <>
      <ul className={styles.places}>
        {places.slice(0, shown).map((place) => (
          <li key={placeName(place)} className={styles.place}>
            <Button
              appearance="subtle"
              size="small"
              className={styles.cell}
              onClick={() => {
                show(workbook, place).catch((error: unknown) => {
                  say({ kind: "failed", text: failureText(error) });
                });
              }}
            >
              {placeName(place)}
            </Button>{" "}
            <span className={styles.quiet}>{placeWords(place)}</span>
          </li>
        ))}
      </ul>
      <ShowMore
        left={places.length - shown}
        onMore={() => {
          setShown(shown + pageSize);
        }}
      />
    </>
  );
}

function show(workbook: Workbook, { at }: Place): Promise<void> {
  return workbook.select({ ...at, rows: 1, columns: 1 });
}

/** What will stand there, or why nothing can be changed. */
function placeWords({ after, closed }: Place): string {
  return closed === undefined ? `→ ${cut(String(after))}` : `stays as it is, because ${closed}`;
}

function cut(text: string): string {
  return text.length > 120 ? `${text.slice(0, 119)}…` : text;
}

function placesLeftWords(places: readonly Place[], chosen: ReadonlySet<PlaceKind>): string {
  const changed = chosenPlaces(places, chosen);
  return `${String(changed.length)} of ${String(places.length)} will be changed`;
}
