import { FluentProvider, Link, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { paneTheme } from "./theme.ts";
import { useAppearance } from "./useAppearance.ts";

const useStyles = makeStyles({
  provider: { minHeight: "100%" },
  page: {
    padding: "16px",
    maxWidth: "560px",
    display: "flex",
    flexDirection: "column",
    gap: "8px",
    backgroundColor: tokens.colorNeutralBackground2,
    color: tokens.colorNeutralForeground1,
  },
  title: { margin: 0, fontSize: tokens.fontSizeBase500, lineHeight: tokens.lineHeightBase500 },
  text: { margin: 0 },
});

/** What this page says when it is opened in a browser by itself: where it is, and how to get to work. */
export function OutsideExcel(): ReactNode {
  const styles = useStyles();
  return (
    <FluentProvider theme={paneTheme(useAppearance(undefined))} className={styles.provider}>
      <div className={styles.page}>
        <h1 className={styles.title}>This is the Excel side of Measure Book</h1>
        <p className={styles.text}>
          It works inside Excel only. In Excel, choose Home, then Add-ins, and open Measure Book there.
        </p>
        <p className={styles.text}>
          Without Excel, <Link href="index.html">open Measure Book with its own spreadsheet</Link>. It does
          the same work and opens and saves .xlsx files.
        </p>
      </div>
    </FluentProvider>
  );
}
