import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useRef, useState } from "react";
import type { ListingForm } from "../../addin/publish/listing.ts";
import { listingForms, listingTable, listingText } from "../../addin/publish/listing.ts";
import type { Published } from "../../addin/publish/published.ts";
import { useSession } from "../shell/session.ts";
import { Choice } from "../ui/Choice.tsx";
import { Part } from "../ui/Part.tsx";

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
});

const formWords: Readonly<Record<ListingForm, string>> = {
  short: "Short: whom it fits",
  long: "Long: why not, and what to change",
  table: "As a table",
};

/** The words under a pattern, ready to be copied into its listing or onto its cover. */
export function ListingPart({ published }: { readonly published: Published }): ReactNode {
  const styles = useStyles();
  const { say } = useSession();
  const { patterns, figures, words } = published;
  const [code, setCode] = useState("");
  const [form, setForm] = useState<ListingForm>("short");
  const text = useRef<HTMLTextAreaElement>(null);
  const pattern = patterns.find((each) => each.code === code) ?? patterns[0];
  if (!pattern) return null;
  const said =
    form === "table"
      ? listingTable(pattern, figures, words)
          .map((row) => row.join("\t"))
          .join("\n")
      : listingText(pattern, figures, words, form);

  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(said);
      say({ kind: "done", text: `The words for ${pattern.code} are copied. Paste them into your listing.` });
    } catch {
      text.current?.focus();
      text.current?.select();
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
          (each) => [each.code, each.title === "" ? each.code : `${each.code} ${each.title}`] as const,
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
        ref={text}
        className={styles.words}
        aria-label={`Words for ${pattern.code}`}
        value={said}
        rows={6}
        readOnly
        dir="auto"
        lang={words.tag}
      />
      <div>
        <Button onClick={() => void copy()}>Copy the words</Button>
      </div>
    </Part>
  );
}
