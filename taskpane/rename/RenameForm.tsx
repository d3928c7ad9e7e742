import { Button, Field, Input, makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useState } from "react";
import type { Book } from "../shell/book.ts";
import { failureText } from "../shell/notice.ts";
import { useSession } from "../shell/session.ts";
import { useRead } from "../shell/useRead.ts";
import { Choice } from "../ui/Choice.tsx";
import { FailureBox } from "../ui/FailureBox.tsx";
import { PlaceChoice } from "../ui/PlaceChoice.tsx";
import type { NamesTable, PlannedRename } from "./planRename.ts";
import { planRename, readNamesTables, renameEdits } from "./planRename.ts";
import { chosenPlaces, placesWords, samePlaces, sureKinds } from "./places.ts";
import { PlacesChoice } from "./PlacesChoice.tsx";

const useStyles = makeStyles({
  text: { margin: 0, overflowWrap: "anywhere" },
  button: { alignSelf: "flex-start" },
});

/** See `RenamePart`. */
export function RenameForm(): ReactNode {
  const styles = useStyles();
  const read = useRead(readTables, undefined);
  const [chosen, setChosen] = useState<string>();
  const tables = read?.tables ?? [];
  const table = tables.find((each) => each.column.table.name === chosen) ?? tables[0];
  if (read?.failure !== undefined) return <FailureBox what="Cannot be read." why={read.failure} />;
  if (!table) {
    return (
      <p className={styles.text}>{read ? "There is no figure or pattern yet." : "Reading the names …"}</p>
    );
  }
  return (
    <>
      {tables.length > 1 && (
        <Choice
          label="What"
          value={table.column.table.name}
          options={tables.map(
            ({
              column: {
                what,
                table: { name },
              },
            }) => [name, `${what === "figure" ? "A figure" : "A pattern"} of the table ${name}`],
          )}
          onChoose={setChosen}
        />
      )}
      <NewName key={table.column.table.name} table={table} />
    </>
  );
}

function NewName({ table }: { readonly table: NamesTable }): ReactNode {
  const styles = useStyles();
  const { workbook, working, apply, say } = useSession();
  const rows = table.names.flatMap((name, row) => (name === "" ? [] : [{ name, row }]));
  const [place, setPlace] = useState(0);
  const [to, setTo] = useState("");
  const [planned, setPlanned] = useState<PlannedRename>();
  const [failure, setFailure] = useState<string>();
  const [chosen, setChosen] = useState(sureKinds);
  const row = rows[place]?.row ?? rows[0]?.row ?? 0;

  const change = (set: () => void): void => {
    setPlanned(undefined);
    setFailure(undefined);
    set();
  };

  async function plan(): Promise<PlannedRename | undefined> {
    try {
      const next = await planRename(workbook, table, row, to);
      setFailure(undefined);
      setPlanned(next);
      return next;
    } catch (error) {
      setPlanned(undefined);
      setFailure(failureText(error));
      return undefined;
    }
  }

  async function rename(shown: PlannedRename): Promise<void> {
    const now = await plan();
    if (!now) return;
    if (!samePlaces(now.places, shown.places)) {
      say({ kind: "failed", text: "The workbook changed meanwhile. Look at the places again." });
      return;
    }
    const { from, to: name } = now;
    const isDone = await apply(`Rename “${from}” to “${name}”`, renameEdits(now, chosen), {
      kind: "done",
      text: `${from} is ${name} now${changedWords(now, chosen)}.`,
    });
    if (isDone) {
      change(() => {
        setTo("");
      });
    }
  }

  return (
    <>
      <PlaceChoice
        label="Name now"
        names={rows.map(({ name }) => name)}
        place={place}
        onChoose={(next) => {
          change(() => {
            setPlace(next);
          });
        }}
      />
      <Field
        label="New name"
        {...(failure === undefined ? {} : { validationState: "error", validationMessage: failure })}
      >
        <Input
          value={to}
          onChange={(_, data) => {
            change(() => {
              setTo(data.value);
            });
          }}
          onKeyDown={(event) => {
            if (event.key === "Enter") void plan();
          }}
        />
      </Field>
      {planned ? (
        <>
          <p className={styles.text}>{plannedWords(planned)}</p>
          {planned.places.length > 0 && (
            <PlacesChoice places={planned.places} chosen={chosen} onChoose={setChosen} />
          )}
          <Button
            appearance="primary"
            className={styles.button}
            disabledFocusable={working !== undefined}
            onClick={() => void rename(planned)}
          >
            Rename
          </Button>
        </>
      ) : (
        <Button className={styles.button} onClick={() => void plan()}>
          See what changes
        </Button>
      )}
    </>
  );
}

function plannedWords({ from, to, places, table }: PlannedRename): string {
  const where = `${from} becomes ${to} in the table ${table}`;
  return places.length === 0
    ? `${where}. Nothing else says ${from}.`
    : `${where}. What else says ${from}: ${placesWords(places)}.`;
}

function changedWords({ places }: PlannedRename, chosen: typeof sureKinds): string {
  const changed = chosenPlaces(places, chosen);
  return changed.length === 0 ? "" : `, in ${placesWords(changed)} too`;
}

async function readTables(book: Book): Promise<{
  readonly tables: readonly NamesTable[];
  readonly failure: string | undefined;
}> {
  try {
    return { tables: await readNamesTables(book), failure: undefined };
  } catch (error) {
    return { tables: [], failure: failureText(error) };
  }
}
