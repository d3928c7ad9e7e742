import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useState } from "react";
import type { Fitting } from "../../addin/fit/match.ts";
import type { WaitedFor } from "../../addin/fit/waiting.ts";
import { waitedFor } from "../../addin/fit/waiting.ts";
import { measureById } from "../../addin/measures/dictionary.ts";
import { patternName } from "../fit/patternName.ts";
import type { Fit } from "../fit/readFit.ts";
import { readFit } from "../fit/readFit.ts";
import { useSession } from "../shell/session.ts";
import { useRead } from "../shell/useRead.ts";
import { card, plainList } from "../ui/boxes.ts";
import { Part } from "../ui/Part.tsx";
import { ShowMore } from "../ui/ShowMore.tsx";
import { count } from "../ui/words.ts";
import type { FiguresToGroup } from "./readGroups.ts";
import { figureAt } from "./sharing.ts";
import { namesWords } from "./words.ts";

const useStyles = makeStyles({
  text: { margin: 0, overflowWrap: "anywhere" },
  list: plainList,
  card,
  name: { margin: 0, fontSize: tokens.fontSizeBase300, fontWeight: 600 },
  actions: { display: "flex", flexWrap: "wrap", gap: "8px" },
});

/** Rows shown at first and added by “Show more”. */
const pageSize = 8;
/** Patterns named on one card. */
const mostNames = 6;

/** The tables of Fit as it finds them. */
const usual = {};

/** The missing readings that verdicts wait for, those that settle most first; nothing where there are no patterns. */
export function VerdictsWait(props: {
  readonly figures: FiguresToGroup;
  /** The way to the cell of a figure. */
  readonly cellOf: (place: number, measure: string) => ReactNode;
}): ReactNode {
  const styles = useStyles();
  const { figures, cellOf } = props;
  const { book, ask } = useSession();
  const fit = useRead(readFit, usual);
  const [shown, setShown] = useState(pageSize);
  const fitting = fittingOf(fit, figures);
  if (!fitting || fitting.patterns.length === 0) return null;
  const { chart } = fitting.view;
  const waited = book.once(waitedFor, fitting);
  return (
    <Part title="Readings that verdicts wait for">
      {waited.length === 0 ? (
        <p className={styles.text}>✓ No pattern waits for a missing reading to say whether it fits.</p>
      ) : (
        <>
          <p className={styles.text}>
            {count(waited.length, "missing reading")} would say more about which pattern fits, those that
            settle most first.
          </p>
          <ul className={styles.list} aria-label="Readings that verdicts wait for, best first">
            {waited.slice(0, shown).map((each) => {
              const { figure, measure } = each;
              const column = chart.measures.find(({ key }) => key === measure);
              const heading = column?.heading ?? measureById(measure)?.name ?? measure;
              return (
                <li key={`${String(figure)} ${measure}`} className={styles.card}>
                  <h3 className={styles.name}>
                    {figureAt(chart, figure)}: {heading}
                  </h3>
                  <p className={styles.text}>{waitWords(fitting, each)}</p>
                  {column ? (
                    <div className={styles.actions}>
                      <Button
                        size="small"
                        onClick={() => {
                          ask("measure", { figure: figureAt(chart, figure), measure });
                        }}
                      >
                        Measure it
                      </Button>
                      {cellOf(figure, measure)}
                    </div>
                  ) : (
                    <p className={styles.text}>
                      The chart has no column for it: type “{heading}” beside its headings.
                    </p>
                  )}
                </li>
              );
            })}
          </ul>
          <ShowMore
            what="readings"
            left={waited.length - shown}
            onMore={() => {
              setShown(shown + pageSize);
            }}
          />
        </>
      )}
    </Part>
  );
}

/** “Settles 2 verdicts: P1 Meadow skirt, P4 Cape; 1 more waits for it, or fits unless it says otherwise: P7 Coat.” */
export function waitWords(
  { patterns: garments }: Pick<Fitting, "patterns">,
  { settles, others }: WaitedFor,
): string {
  const names = (rows: readonly number[]): string =>
    namesWords(
      rows.flatMap((row) => (garments[row] ? [patternName(garments[row].pattern)] : [])),
      mostNames,
    );
  const settled =
    settles.length === 0 ? "" : `Settles ${count(settles.length, "verdict")}: ${names(settles)}.`;
  const { length } = others;
  if (length === 0) return settled;
  const more = settled === "" ? count(length, "verdict") : `${String(length)} more`;
  const wait =
    length === 1 ? "waits for other readings too, or holds" : "wait for other readings too, or hold";
  return `${settled} ${more} ${wait} unless it says otherwise: ${names(others)}.`.trim();
}

/** The fitting of the same figures; Groups may have been told to go by another table. */
function fittingOf(fit: Fit | undefined, { table }: FiguresToGroup): Fitting | undefined {
  return fit?.used.figures?.name === table.name ? fit.fitting : undefined;
}
