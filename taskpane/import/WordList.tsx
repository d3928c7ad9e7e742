import { Select, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useEffect, useState } from "react";
import type { FoundWord } from "../../addin/chart/import/patternPlan.ts";
import type { ChosenWords, Words } from "../../addin/chart/import/patternWords.ts";
import { wordId } from "../../addin/chart/import/patternWords.ts";
import { plainList } from "../ui/boxes.ts";
import { Disclosure } from "../ui/Disclosure.tsx";
import { ShowMore } from "../ui/ShowMore.tsx";
import { meaning } from "../ui/theme.ts";
import { count } from "../ui/words.ts";

const useStyles = makeStyles({
  list: { ...plainList, gap: "8px" },
  item: { display: "grid", gridTemplateColumns: "minmax(0, 1fr) 152px", gap: "8px", alignItems: "center" },
  word: { overflowWrap: "anywhere" },
  quiet: { display: "block", color: tokens.colorNeutralForeground3, fontSize: tokens.fontSizeBase200 },
  look: { color: meaning.brass },
  choice: { minWidth: 0, "> select": { minWidth: 0, textOverflow: "ellipsis" } },
});

const pageSize = 30;

/** What the list’s own words were taken for, to be changed; those that nothing tells come first and are asked about. */
export function WordList(props: {
  readonly words: readonly FoundWord[];
  readonly dictionary: Words;
  readonly chosen: ChosenWords;
  readonly change: (chosen: ChosenWords) => void;
}): ReactNode {
  const styles = useStyles();
  const { words, dictionary, chosen, change } = props;
  const [shown, setShown] = useState(pageSize);
  const open = words.filter(({ value }) => value === undefined).length;
  const [isOpen, setOpen] = useState(open > 0);
  useEffect(() => {
    if (open > 0) setOpen(true);
  }, [open]);
  if (words.length === 0) return null;
  return (
    <Disclosure
      title="Words"
      says={open === 0 ? `${count(words.length, "word")} understood` : `◆ ${String(open)} to choose`}
      open={isOpen}
      onToggle={setOpen}
    >
      <ul className={styles.list}>
        {words.slice(0, shown).map(({ key, column, text, times, value, isAsked, offer }) => (
          <li key={wordId(key, text)} className={styles.item}>
            <span className={styles.word}>
              {text}
              <span className={styles.quiet}>
                {value === undefined && (
                  <span className={styles.look}>
                    {offer ? `${upper(offer.says)}. ` : "◆ Please choose. "}
                  </span>
                )}
                {value !== undefined && offer && `${upper(offer.says)}. `}
                {column}
                {times > 1 && `, ${String(times)} times`}
              </span>
            </span>
            <Select
              className={styles.choice}
              aria-label={offer ? `Drafted for, to fit ${text}` : `What “${text}” means (${column})`}
              value={value ?? "?"}
              onChange={(_, data) => {
                const next = new Map(chosen);
                if (data.value === "?") next.delete(wordId(key, text));
                else next.set(wordId(key, text), data.value);
                change(next);
              }}
            >
              {isAsked && <option value="?">{offer ? "not chosen" : "not understood"}</option>}
              {(offer?.choices ?? dictionary.choicesFor(key, text).map(choiceAlone)).map((choice) => (
                <option key={choice.value} value={choice.value}>
                  {choice.says ? `${choice.value} – ${choice.says}` : choice.value}
                </option>
              ))}
              <option value="">leave empty</option>
            </Select>
          </li>
        ))}
      </ul>
      <ShowMore
        left={words.length - shown}
        onMore={() => {
          setShown(shown + pageSize);
        }}
      />
    </Disclosure>
  );
}

function choiceAlone(value: string): { readonly value: string; readonly says?: string } {
  return { value };
}

function upper(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
