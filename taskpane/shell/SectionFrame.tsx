import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useSession } from "./session.ts";

const useStyles = makeStyles({
  head: {
    position: "sticky",
    top: 0,
    zIndex: 1,
    minHeight: "48px",
    padding: "8px 16px",
    boxSizing: "border-box",
    display: "flex",
    // Large letters have no room beside each other.
    flexWrap: "wrap",
    alignItems: "center",
    justifyContent: "space-between",
    gap: "8px",
    backgroundColor: tokens.colorNeutralBackground2,
    borderBottom: `1px solid ${tokens.colorNeutralStroke1}`,
  },
  title: {
    margin: 0,
    fontSize: tokens.fontSizeBase500,
    lineHeight: tokens.lineHeightBase500,
    fontWeight: 600,
  },
  content: {
    padding: "16px",
    display: "flex",
    flexDirection: "column",
    gap: "16px",
    "> *": { minWidth: 0, maxWidth: "100%" },
  },
});

export interface PrimaryAction {
  readonly label: string;
  readonly run: () => void;
  readonly disabled?: boolean;
}

/** A section: its title and its one primary action stay in sight. */
export function SectionFrame(props: {
  readonly title: string;
  readonly primary?: PrimaryAction | undefined;
  readonly children: ReactNode;
}): ReactNode {
  const styles = useStyles();
  const { working } = useSession();
  const { title, primary, children } = props;
  return (
    <>
      <header className={styles.head}>
        <h1 className={styles.title}>{title}</h1>
        {primary && (
          <Button
            appearance="primary"
            disabledFocusable={primary.disabled === true || working !== undefined}
            onClick={primary.run}
          >
            {primary.label}
          </Button>
        )}
      </header>
      <div className={styles.content}>{children}</div>
    </>
  );
}
