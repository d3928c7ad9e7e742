import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useEffect, useId, useRef } from "react";
import { download } from "../drawing/download.ts";
import { useSession } from "../shell/session.ts";
import { card } from "../ui/boxes.ts";

const useStyles = makeStyles({
  box: { ...card, gap: "8px", "&:focus-visible": { outlineOffset: "1px" } },
  title: { margin: 0, fontSize: tokens.fontSizeBase300, fontWeight: 600, overflowWrap: "anywhere" },
  text: { margin: 0 },
  actions: { display: "flex", flexWrap: "wrap", gap: "8px" },
  page: { width: "100%", boxSizing: "border-box", fontFamily: tokens.fontFamilyMonospace },
});

/** Ways to keep a page where a download cannot be relied on. Says of none that it has worked but of the copy, which is seen. */
export function SavePageBox(props: {
  readonly name: string;
  readonly page: string;
  readonly onClose: () => void;
}): ReactNode {
  const styles = useStyles();
  const { say } = useSession();
  const { name, page, onClose } = props;
  const box = useRef<HTMLDivElement>(null);
  const text = useRef<HTMLTextAreaElement>(null);
  const id = useId();
  useEffect(() => {
    box.current?.focus();
  }, [page]);
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(page);
      say({
        kind: "done",
        text: `The page is copied as text. Paste it into an empty plain text file, and give that the name ${name}.`,
      });
    } catch {
      text.current?.focus();
      text.current?.select();
      say({
        kind: "failed",
        text: "Excel does not let the pane copy. The text is selected: press Ctrl+C, on a Mac Cmd+C.",
      });
    }
  };
  return (
    <div ref={box} tabIndex={-1} className={styles.box} role="region" aria-label={`Save ${name}`}>
      <p className={styles.title}>Save {name}</p>
      <p className={styles.text}>
        Excel keeps a pane from saving files on some computers, and does not say whether it did. The text of
        the page can be copied in every Excel.
      </p>
      <div className={styles.actions}>
        <Button size="small" appearance="primary" onClick={() => void copy()}>
          Copy the page as text
        </Button>
        <Button
          size="small"
          onClick={() => {
            download(name, page, "text/html;charset=utf-8");
          }}
        >
          Try to save it from here
        </Button>
        <Button size="small" onClick={onClose}>
          Close
        </Button>
      </div>
      <label htmlFor={id}>The page as text</label>
      <textarea
        id={id}
        ref={text}
        className={styles.page}
        value={page}
        readOnly
        rows={3}
        spellCheck={false}
      />
    </div>
  );
}
