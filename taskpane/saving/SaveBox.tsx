import { Button, Link, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useEffect, useId, useRef, useState } from "react";
import { download } from "../drawing/download.ts";
import { card } from "../ui/boxes.ts";
import { failureText } from "../shell/notice.ts";
import { useSession } from "../shell/session.ts";
import type { SentDrawing } from "./drawingLink.ts";
import { drawingAddress } from "./drawingLink.ts";

const useStyles = makeStyles({
  box: { ...card, gap: "8px", "&:focus-visible": { outlineOffset: "1px" } },
  title: { margin: 0, fontSize: tokens.fontSizeBase300, fontWeight: 600, overflowWrap: "anywhere" },
  text: { margin: 0 },
  actions: { display: "flex", flexWrap: "wrap", gap: "8px" },
  svg: {
    width: "100%",
    boxSizing: "border-box",
    fontFamily: tokens.fontFamilyMonospace,
    fontSize: tokens.fontSizeBase200,
    color: tokens.colorNeutralForeground2,
    backgroundColor: tokens.colorNeutralBackground2,
    border: `1px solid ${tokens.colorNeutralStroke1}`,
  },
  quiet: { margin: 0, color: tokens.colorNeutralForeground3 },
  address: { overflowWrap: "anywhere" },
  picture: { maxWidth: "100%", backgroundColor: "white" },
});

/** A drawing that is to be kept where a download cannot be relied on. */
export interface Saving extends SentDrawing {
  readonly as: "svg" | "png";
  /** The picture, where that is what was asked for. */
  readonly picture?: Blob;
}

/**
 * Ways to keep a drawing that work in every Excel: its own page in the user’s browser, and its text to copy. Says of none
 * that it has worked but of the copy, which is seen.
 */
export function SaveBox({
  saving,
  onClose,
}: {
  readonly saving: Saving;
  readonly onClose: () => void;
}): ReactNode {
  const styles = useStyles();
  const { services, say } = useSession();
  const { openInBrowser } = services;
  const [address, setAddress] = useState<string>();
  const [picture, setPicture] = useState<string>();
  const box = useRef<HTMLDivElement>(null);
  const text = useRef<HTMLTextAreaElement>(null);
  const id = useId();
  const file = `${saving.name}.${saving.as}`;

  useEffect(() => {
    let current = true;
    box.current?.focus();
    drawingAddress(saving, window.location.href).then(
      (made) => {
        if (current) setAddress(made);
      },
      () => undefined,
    );
    const shown = saving.picture && URL.createObjectURL(saving.picture);
    setPicture(shown);
    return () => {
      current = false;
      if (shown !== undefined) URL.revokeObjectURL(shown);
    };
  }, [saving]);

  const attempt = (action: () => void): void => {
    try {
      action();
    } catch (error) {
      say({ kind: "failed", text: failureText(error) });
    }
  };
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(saving.svg);
      say({
        kind: "done",
        text: `The drawing is copied as text. Paste it into an empty plain text file, and give that a name that ends in .svg.`,
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
    <div ref={box} tabIndex={-1} className={styles.box} role="region" aria-label={`Save ${file}`}>
      <p className={styles.title}>Save {file}</p>
      <p className={styles.text}>
        Excel keeps a pane from saving files on some computers, and does not say whether it did.{" "}
        {address !== undefined && "In your browser it works: "}
        {address !== undefined && !openInBrowser && (
          <Link href={address} target="_blank" rel="noopener">
            Open it in your browser
          </Link>
        )}
      </p>
      <div className={styles.actions}>
        {address !== undefined && openInBrowser && (
          <Button
            size="small"
            appearance="primary"
            onClick={() => {
              attempt(() => {
                openInBrowser(address);
              });
            }}
          >
            Open it in your browser
          </Button>
        )}
        <Button size="small" onClick={() => void copy()}>
          Copy the drawing as text
        </Button>
        <Button
          size="small"
          onClick={() => {
            attempt(() => {
              download(
                file,
                saving.picture ?? saving.svg,
                saving.as === "png" ? "image/png" : "image/svg+xml",
              );
            });
          }}
        >
          Try to save it from here
        </Button>
        <Button size="small" onClick={onClose}>
          Close
        </Button>
      </div>
      {picture !== undefined && (
        <>
          <p className={styles.text}>Or copy the picture itself: right-click it, then Copy image.</p>
          <img className={styles.picture} src={picture} alt={file} />
        </>
      )}
      <label htmlFor={id}>The drawing as text</label>
      <textarea
        id={id}
        ref={text}
        className={styles.svg}
        value={saving.svg}
        readOnly
        rows={3}
        spellCheck={false}
      />
      <p className={styles.quiet}>
        It is a drawing once it stands in a plain text file whose name ends in .svg, or on{" "}
        <span className={styles.address}>{new URL("save.html", window.location.href).href}</span>.
      </p>
    </div>
  );
}
