import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useRef, useState } from "react";
import type { ListingForm } from "../../addin/publish/listing.ts";
import { listingForms, listingTable, listingText } from "../../addin/publish/listing.ts";
import type { Published, PublishedPattern } from "../../addin/publish/published.ts";
import { useSession } from "../shell/session.ts";
import { Choice } from "../ui/Choice.tsx";
import { Part } from "../ui/Part.tsx";
import { count } from "../ui/words.ts";
import type { Since } from "./sinceWords.ts";
import { changedPatterns, patternChanges } from "./sinceWords.ts";

const useStyles = makeStyles({
  words: {
    width: "100%",
    boxSizing: "border-box",
    font: "inherit",
    padding: "8px",
    color: tokens.colorNeutralForeground1,
    backgroundColor: tokens.colorNeutralBackground1,
    border: `1px solid ${tokens.colorNeutralStroke1}`,
    borderRadius: tokens.borderRadiusMedium,
    resize: "vertical",
  },
  text: { margin: 0, overflowWrap: "anywhere" },
  row: { display: "flex", flexWrap: "wrap", gap: "8px" },
});

const formWords: Readonly<Record<ListingForm, string>> = {
  short: "Short: whom it fits",
  long: "Long: why not, and what to change",
  table: "As a table",
};

/** The words under a pattern, ready to be copied into its listing or onto its cover, and whose words are others since the last publication. */
export function ListingPart(props: {
  readonly published: Published;
  readonly since: Since | undefined;
}): ReactNode {
  const { published, since } = props;
  const styles = useStyles();
  const { say } = useSession();
  const { patterns, figures, words } = published;
  const [code, setCode] = useState("");
  const [form, setForm] = useState<ListingForm>("short");
  const box = useRef<HTMLTextAreaElement>(null);
  const pattern = patterns.find((each) => each.code === code) ?? patterns[0];
  if (!pattern) return null;
  const wordsFor = (each: PublishedPattern): string =>
    form === "table"
      ? listingTable(each, figures, words)
          .map((row) => row.join("\t"))
          .join("\n")
      : listingText(each, figures, words, form);
  const said = wordsFor(pattern);
  const changed = changedPatterns(patterns, since);
  const isChanged = ({ code }: PublishedPattern): boolean => changed.some((each) => each.code === code);
  const named = (each: PublishedPattern): string =>
    each.title === "" ? each.code : `${each.code} ${each.title}`;

  const copy = async (text: string, whose: string): Promise<void> => {
    try {
      await navigator.clipboard.writeText(text);
      say({ kind: "done", text: `The words for ${whose} are copied. Paste them into your listing.` });
    } catch {
      box.current?.focus();
      box.current?.select();
      say({
        kind: "failed",
        text: "Copying is not allowed here. The words are selected: press Ctrl+C, on a Mac Cmd+C.",
      });
    }
  };

  return (
    <Part title="Words under a pattern">
      <Choice
        label="Pattern"
        value={pattern.code}
        options={patterns.map(
          (each) => [each.code, isChanged(each) ? `${named(each)} – changed` : named(each)] as const,
        )}
        onChoose={setCode}
      />
      <Choice
        label="Form"
        value={form}
        options={listingForms.map((each) => [each, formWords[each]] as const)}
        onChoose={setForm}
      />
      <textarea
        ref={box}
        className={styles.words}
        aria-label={`Words for ${pattern.code}`}
        value={said}
        rows={6}
        readOnly
        dir="auto"
        lang={words.tag}
      />
      {since && isChanged(pattern) && <p className={styles.text}>{patternChanges(pattern.code, since)}</p>}
      <div className={styles.row}>
        <Button onClick={() => void copy(said, pattern.code)}>Copy the words</Button>
        {changed.length > 0 && (
          <Button
            onClick={() =>
              void copy(
                changed.map((each) => `${named(each)}\n${wordsFor(each)}`).join("\n\n"),
                count(changed.length, "pattern"),
              )
            }
          >
            {changed.length === 1
              ? "Copy those that changed"
              : `Copy the ${String(changed.length)} that changed`}
          </Button>
        )}
      </div>
    </Part>
  );
}
