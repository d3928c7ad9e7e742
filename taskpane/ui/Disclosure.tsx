import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { meaning } from "./theme.ts";

const useStyles = makeStyles({
  box: {
    borderRadius: tokens.borderRadiusMedium,
    border: `1px solid ${tokens.colorNeutralStroke1}`,
    backgroundColor: tokens.colorNeutralBackground1,
  },
  summary: {
    padding: "8px 12px",
    cursor: "pointer",
    fontWeight: 600,
    borderRadius: tokens.borderRadiusMedium,
    "&:focus-visible": { outline: `2px solid ${meaning.chalk}`, outlineOffset: "1px" },
  },
  quiet: { fontWeight: 400, color: tokens.colorNeutralForeground3 },
  body: { padding: "4px 12px 12px", display: "flex", flexDirection: "column", gap: "8px" },
});

/** A part of a section that opens and closes in place. */
export function Disclosure(props: {
  readonly title: string;
  /** What it comes to, readable while closed. */
  readonly says?: string;
  readonly open?: boolean;
  /** Told when the user opens or closes it. */
  readonly onToggle?: (isOpen: boolean) => void;
  readonly children: ReactNode;
}): ReactNode {
  const styles = useStyles();
  return (
    <details
      className={styles.box}
      open={props.open}
      onToggle={(event) => {
        props.onToggle?.(event.currentTarget.open);
      }}
    >
      <summary className={styles.summary}>
        {props.title}
        {props.says && <span className={styles.quiet}> – {props.says}</span>}
      </summary>
      <div className={styles.body}>{props.children}</div>
    </details>
  );
}
