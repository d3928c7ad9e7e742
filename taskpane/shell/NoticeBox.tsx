import { Button, makeStyles, mergeClasses, shorthands, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useEffect, useRef } from "react";
import { useSession } from "./session.ts";
import { meaning } from "../ui/theme.ts";

const useStyles = makeStyles({
  place: { flexShrink: 0, outlineStyle: "none" },
  box: {
    padding: "8px 12px",
    borderRadius: tokens.borderRadiusMedium,
    margin: "8px",
    maxHeight: "min(200px, 30vh)",
    overflowY: "auto",
    boxShadow: tokens.shadow4,
    display: "flex",
    flexDirection: "column",
    alignItems: "flex-start",
    gap: "4px",
    overflowWrap: "anywhere",
  },
  done: {
    color: tokens.colorNeutralForeground1,
    backgroundColor: meaning.leafGround,
    ...shorthands.border("1px", "solid", meaning.leaf),
  },
  failed: {
    color: tokens.colorNeutralForeground1,
    backgroundColor: meaning.threadGround,
    ...shorthands.border("1px", "solid", meaning.thread),
  },
  working: {
    backgroundColor: tokens.colorNeutralBackground1,
    ...shorthands.border("1px", "solid", tokens.colorNeutralStroke1),
  },
  word: { fontWeight: 600 },
  doneWord: { color: meaning.leaf },
  failedWord: { color: meaning.thread },
  list: { margin: 0, paddingLeft: "20px" },
});

/**
 * Says what is being done, what was done, or what failed, in sight wherever the section is scrolled to. Always there,
 * so that screen readers hear changes.
 */
export function NoticeBox(): ReactNode {
  const styles = useStyles();
  const { working, notice, say } = useSession();
  const place = useRef<HTMLDivElement>(null);
  // The result of an action is where the keyboard goes on.
  useEffect(() => {
    if (notice && isWaiting(place.current)) place.current?.focus();
  }, [notice]);
  return (
    <div ref={place} tabIndex={-1} className={styles.place} role="status" aria-live="polite">
      {working ? (
        <div className={mergeClasses(styles.box, styles.working)}>{working}</div>
      ) : notice ? (
        <div className={mergeClasses(styles.box, styles[notice.kind])}>
          <span>
            <span
              className={mergeClasses(
                styles.word,
                notice.kind === "done" ? styles.doneWord : styles.failedWord,
              )}
            >
              {notice.kind === "done" ? "✓ Done." : "✕ Not done."}
            </span>{" "}
            {notice.text}
          </span>
          {notice.more && notice.more.length > 0 && (
            <ul className={styles.list}>
              {notice.more.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          )}
          <Button
            size="small"
            onClick={() => {
              // The button goes; the focus stays here.
              place.current?.focus();
              say(undefined);
            }}
          >
            Close this message
          </Button>
        </div>
      ) : null}
    </div>
  );
}

/**
 * Whether the keyboard is in the pane, or nowhere because what it was on has gone with the action. Undo keeps it: it
 * stays there, for the next press.
 */
function isWaiting(place: HTMLElement | null): boolean {
  const now = document.activeElement;
  if (!now || now === document.body) return true;
  const pane = place?.parentElement;
  return pane?.contains(now) === true && now.closest("[data-keeps-focus]") === null;
}
