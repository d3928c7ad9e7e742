import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useEffect, useId, useRef } from "react";
import { download } from "../drawing/download.ts";
import { failureText } from "../shell/notice.ts";
import { useSession } from "../shell/session.ts";
import { card } from "../ui/boxes.ts";

const useStyles = makeStyles({
  box: { ...card, gap: "8px", "&:focus-visible": { outlineOffset: "1px" } },
  title: { margin: 0, fontSize: tokens.fontSizeBase300, fontWeight: 600, overflowWrap: "anywhere" },
  text: { margin: 0 },
  actions: { display: "flex", flexWrap: "wrap", gap: "8px" },
  area: {
    width: "100%",
    boxSizing: "border-box",
    fontFamily: tokens.fontFamilyMonospace,
    fontSize: tokens.fontSizeBase200,
    color: tokens.colorNeutralForeground2,
    backgroundColor: tokens.colorNeutralBackground2,
    border: `1px solid ${tokens.colorNeutralStroke1}`,
  },
});

/** What is to be kept. */
export interface ToKeep {
  /** The name of its file. */
  readonly file: string;
  /** “drawing”: what it is called. */
  readonly what: string;
  readonly text: string;
  /** “a name that ends in .svg”: what the file is to be called into which the text is pasted. */
  readonly called: string;
  readonly content: Blob | string;
  readonly type: string;
}

/**
 * Ways to keep something where a download cannot be relied on: its text to copy, and what else there is. Says of none that it
 * has worked but of the copy, which is seen.
 */
export function CopyBox(props: {
  readonly keep: ToKeep;
  /** What was asked for: another one, and the box gets the keyboard. */
  readonly asked: unknown;
  /** Follows “… does not say whether it did.” */
  readonly advice: ReactNode;
  /** A better way than to copy, before it. */
  readonly better?: ReactNode;
  /** Between the buttons and the text. */
  readonly picture?: ReactNode;
  readonly children?: ReactNode;
  readonly onClose: () => void;
}): ReactNode {
  const styles = useStyles();
  const { say } = useSession();
  const { keep, asked, advice, better, picture, children, onClose } = props;
  const { file, what, text } = keep;
  const box = useRef<HTMLDivElement>(null);
  const area = useRef<HTMLTextAreaElement>(null);
  const id = useId();
  useEffect(() => {
    box.current?.focus();
  }, [asked]);

  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(text);
      say({
        kind: "done",
        text: `The ${what} is copied as text. Paste it into an empty plain text file, and give that ${keep.called}.`,
      });
    } catch {
      area.current?.focus();
      area.current?.select();
      say({
        kind: "failed",
        text: "Excel does not let the pane copy. The text is selected: press Ctrl+C, on a Mac Cmd+C.",
      });
    }
  };
  const save = (): void => {
    try {
      download(file, keep.content, keep.type);
    } catch (error) {
      say({ kind: "failed", text: failureText(error) });
    }
  };

  return (
    <div ref={box} tabIndex={-1} className={styles.box} role="region" aria-label={`Save ${file}`}>
      <p className={styles.title}>Save {file}</p>
      <p className={styles.text}>
        Excel keeps a pane from saving files on some computers, and does not say whether it did. {advice}
      </p>
      <div className={styles.actions}>
        {better}
        <Button size="small" {...(!better && { appearance: "primary" })} onClick={() => void copy()}>
          Copy the {what} as text
        </Button>
        <Button size="small" onClick={save}>
          Try to save it from here
        </Button>
        <Button size="small" onClick={onClose}>
          Close
        </Button>
      </div>
      {picture}
      <label htmlFor={id}>The {what} as text</label>
      <textarea
        id={id}
        ref={area}
        className={styles.area}
        value={text}
        readOnly
        rows={3}
        spellCheck={false}
      />
      {children}
    </div>
  );
}
