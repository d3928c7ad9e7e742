import { makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useState } from "react";
import type { Changes } from "../../addin/publish/changes.ts";
import { isUnchanged } from "../../addin/publish/changes.ts";
import { card } from "../ui/boxes.ts";
import { Disclosure } from "../ui/Disclosure.tsx";
import { PlainTable } from "../ui/PlainTable.tsx";
import { ShowMore } from "../ui/ShowMore.tsx";
import type { Since } from "./sinceWords.ts";
import { dayName } from "../ui/words.ts";
import { changeWords } from "./sinceWords.ts";

const useStyles = makeStyles({
  card: { ...card, gap: "8px" },
  text: { margin: 0, overflowWrap: "anywhere" },
});

/** What buyers of the last publication do not know, so that the maker sees whom to tell. */
export function SincePart({ since }: { readonly since: Since }): ReactNode {
  const styles = useStyles();
  const { day, changes, before } = since;
  const today = new Date();
  return (
    <section className={styles.card} aria-label="What changed">
      <p className={styles.text}>
        Since you published on {dayName(day, today)}
        {isUnchanged(changes) ? " nothing has changed." : `: ${changeWords(changes)}`}
      </p>
      <AllChanges title="All that changed" changes={changes} />
      {before && !isUnchanged(before.changes) && (
        <>
          <p className={styles.text}>
            With it changed, since {before.day === day ? "earlier that day" : dayName(before.day, today)}:{" "}
            {changeWords(before.changes)}
          </p>
          <AllChanges title="All that changed with it" changes={before.changes} />
        </>
      )}
    </section>
  );
}

function AllChanges({ title, changes }: { readonly title: string; readonly changes: Changes }): ReactNode {
  const { figuresAdded, figuresGone, figuresRenamed, measuresAdded, measuresGone } = changes;
  if (isUnchanged(changes)) return null;
  return (
    <Disclosure title={title}>
      <Rows
        label="Verdicts that turned"
        headings={["Pattern", "Figure", "Before", "Now"]}
        rows={changes.verdicts.map(({ pattern, figure, from, to }) => [pattern, figure, from, to])}
      />
      <Rows
        label="Readings that changed"
        headings={["Reading", "Before", "Now"]}
        rows={changes.readings.map(({ figure, measure, from, to }) => [
          `${figure}, ${measure}`,
          from ?? notPublished,
          to ?? notPublished,
        ])}
      />
      <Names label="Figures added" names={figuresAdded} />
      <Names label="Figures gone" names={figuresGone} />
      <Names
        label="Renamed, to judge by the readings"
        names={figuresRenamed.map(({ from, to }) => `${from} is ${to} now`)}
      />
      <Names label="Measures added" names={measuresAdded} />
      <Names label="Measures gone" names={measuresGone} />
      <Names label="Patterns added" names={changes.patternsAdded} />
      <Names label="Patterns gone" names={changes.patternsGone} />
    </Disclosure>
  );
}

const notPublished = "– (not published)";
const shownAtOnce = 50;

function Rows(props: {
  readonly label: string;
  readonly headings: readonly string[];
  readonly rows: readonly (readonly string[])[];
}): ReactNode {
  const styles = useStyles();
  const { label, headings, rows } = props;
  const [shown, setShown] = useState(shownAtOnce);
  if (rows.length === 0) return null;
  return (
    <>
      <p className={styles.text}>{label}</p>
      <PlainTable
        label={label}
        headings={headings}
        rows={rows.slice(0, shown)}
        all={rows}
        wordy={[1, 2, 3]}
      />
      <ShowMore
        left={rows.length - shown}
        onMore={() => {
          setShown(shown + shownAtOnce);
        }}
      />
    </>
  );
}

function Names({ label, names }: { readonly label: string; readonly names: readonly string[] }): ReactNode {
  const styles = useStyles();
  if (names.length === 0) return null;
  return (
    <p className={styles.text}>
      {label}: {names.join(", ")}.
    </p>
  );
}
