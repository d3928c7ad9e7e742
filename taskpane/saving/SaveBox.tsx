import { Button, Link, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useEffect, useState } from "react";
import { failureText } from "../shell/notice.ts";
import { useSession } from "../shell/session.ts";
import { CopyBox } from "./CopyBox.tsx";
import type { SentDrawing } from "./drawingLink.ts";
import { drawingAddress } from "./drawingLink.ts";

const useStyles = makeStyles({
  text: { margin: 0 },
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

/** Ways to keep a drawing that work in every Excel: its own page in the user’s browser, its text, and the picture itself. */
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
  const file = `${saving.name}.${saving.as}`;

  useEffect(() => {
    let current = true;
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

  const open = (how: (link: string) => void, link: string): void => {
    try {
      how(link);
    } catch (error) {
      say({ kind: "failed", text: failureText(error) });
    }
  };

  return (
    <CopyBox
      keep={{
        ...{ file, what: "drawing", text: saving.svg, called: "a name that ends in .svg" },
        content: saving.picture ?? saving.svg,
        type: saving.as === "png" ? "image/png" : "image/svg+xml",
      }}
      asked={saving}
      advice={
        address !== undefined && (
          <>
            In your browser it works:{" "}
            {!openInBrowser && (
              <Link href={address} target="_blank" rel="noopener">
                Open it in your browser
              </Link>
            )}
          </>
        )
      }
      better={
        address !== undefined &&
        openInBrowser && (
          <Button
            size="small"
            appearance="primary"
            onClick={() => {
              open(openInBrowser, address);
            }}
          >
            Open it in your browser
          </Button>
        )
      }
      picture={
        picture !== undefined && (
          <>
            <p className={styles.text}>Or copy the picture itself: right-click it, then Copy image.</p>
            <img className={styles.picture} src={picture} alt={file} />
          </>
        )
      }
      onClose={onClose}
    >
      <p className={styles.quiet}>
        It is a drawing once it stands in a plain text file whose name ends in .svg, or on{" "}
        <span className={styles.address}>{new URL("save.html", window.location.href).href}</span>.
      </p>
    </CopyBox>
  );
}
