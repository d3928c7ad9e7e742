import { Link, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { kindSigns } from "../../addin/publish/page/kindSigns.ts";
import type { PublicationAtWork, PublishedRow } from "../../addin/publish/published.ts";
import { useSession } from "../shell/session.ts";
import { card } from "../ui/boxes.ts";
import { Disclosure } from "../ui/Disclosure.tsx";
import { PlainTable } from "../ui/PlainTable.tsx";
import { count } from "../ui/words.ts";
import { fitKinds } from "../../addin/publish/words/words.ts";

const useStyles = makeStyles({
  card: { ...card, gap: "8px" },
  title: { margin: 0, fontSize: tokens.fontSizeBase400, fontWeight: 600, overflowWrap: "anywhere" },
  text: { margin: 0, overflowWrap: "anywhere" },
  quiet: { margin: 0, color: tokens.colorNeutralForeground3, fontSize: tokens.fontSizeBase200 },
  list: { margin: 0, paddingLeft: "20px" },
});

/** Rows and columns that are enough to see how it comes out. */
const shownRows = 4;
const shownColumns = 2;
const mostListed = 12;

/** What would be published now: how much, how it looks, and what is held back. */
export function Preview({ work: { published } }: { readonly work: PublicationAtWork }): ReactNode {
  const styles = useStyles();
  const { goTo } = useSession();
  const { title, figures, rows, columns, patterns, bodies, leftOut, aboutBodies, notJudged } = published;
  const { unitHeadings, publication } = published;
  const kinds = fitKinds.map((kind) => ({
    kind,
    count: patterns.reduce(
      (sum, { answers }) => sum + answers.filter((each) => each.kind === kind).length,
      0,
    ),
  }));
  const about = [
    count(figures.length, "figure"),
    ...(rows.length === figures.length ? [] : [`in ${count(rows.length, "row")}`]),
    `with ${count(columns.length, "measure")}`,
    ...(patterns.length > 0 ? [`and ${count(patterns.length, "pattern")}`] : []),
  ].join(" ");
  return (
    <section className={styles.card} aria-label="What buyers will read">
      <h2 className={styles.title}>{title}</h2>
      <p className={styles.text}>
        {about}, in {publication.language}.{" "}
        {bodies.length > 0 &&
          `${count(bodies.length, "body is", "bodies are")} shared by several of them, as in Groups.`}
      </p>
      <PlainTable
        label="The first rows of the chart"
        headings={[
          published.words.page.figure,
          ...columns.slice(0, shownColumns).map(({ term }) => `${term} (${unitHeadings[0] ?? ""})`),
        ]}
        rows={rows.slice(0, shownRows).map(rowOf)}
      />
      {rows.length > shownRows || columns.length > shownColumns ? (
        <p className={styles.quiet}>
          The beginning: {count(rows.length, "row")} and {count(columns.length, "measure")} in all.
        </p>
      ) : null}
      {patterns.length > 0 && (
        <p className={styles.text}>
          Patterns on figures:{" "}
          {kinds.map(
            ({ kind, count: of }, i) =>
              `${i > 0 ? " · " : ""}${kindSigns[kind]} ${String(of)} ${kindWords[kind]}`,
          )}
          .
        </p>
      )}
      {patterns.length === 0 && (
        <p className={styles.text}>No pattern is published: the page holds the chart alone.</p>
      )}
      {notJudged.length > 0 && (
        <p className={styles.text}>
          {notJudged.join(", ")} cannot be judged: mend {notJudged.length > 1 ? "their rows" : "its row"}{" "}
          under{" "}
          <Link
            as="button"
            onClick={() => {
              goTo("fit");
            }}
          >
            Fit
          </Link>
          .
        </p>
      )}
      {leftOut.length > 0 && (
        <Disclosure
          title={`${count(leftOut.length, "reading is", "readings are")} held back`}
          says="a dash stands there"
        >
          <p className={styles.text}>
            Nothing that rests on them is said either. Confirm or mend them under{" "}
            <Link
              as="button"
              onClick={() => {
                goTo("check");
              }}
            >
              Check
            </Link>
            , or publish them with a mark.
          </p>
          {aboutBodies.map((line) => (
            <p key={line} className={styles.text}>
              {line}
            </p>
          ))}
          <ul className={styles.list}>
            {leftOut.slice(0, mostListed).map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          {leftOut.length > mostListed && (
            <p className={styles.text}>and {leftOut.length - mostListed} more.</p>
          )}
        </Disclosure>
      )}
    </section>
  );
}

const kindWords = {
  fits: "fit",
  change: "with a change",
  unsure: "to be measured",
  not: "do not fit",
} as const;

function rowOf({ names, cells }: PublishedRow): readonly string[] {
  return [names.join(", "), ...cells.slice(0, shownColumns).map(({ texts }) => texts[0] ?? "–")];
}
