import { Button, FluentProvider, Link, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { browserServices } from "./hostServices.ts";
import { paneTheme } from "../ui/theme.ts";
import { useAppearance } from "./useAppearance.ts";

const useStyles = makeStyles({
  provider: { minHeight: "100%", backgroundColor: tokens.colorNeutralBackground2 },
  page: {
    padding: "16px",
    maxWidth: "560px",
    display: "flex",
    flexDirection: "column",
    alignItems: "flex-start",
    gap: "8px",
    backgroundColor: tokens.colorNeutralBackground2,
    color: tokens.colorNeutralForeground1,
  },
  title: { margin: 0, fontSize: tokens.fontSizeBase500, lineHeight: tokens.lineHeightBase500 },
  text: { margin: 0 },
});

/** Why the pane cannot be shown. */
type Why = "browser" | "unreachable" | "no answer" | "too old";

interface Words {
  readonly title: string;
  readonly says: readonly string[];
  /** Whether loading the page anew can help. */
  readonly again: boolean;
}

const words: Readonly<Record<Why, Words>> = {
  browser: {
    title: "This is the Excel side of Measure Book",
    says: ["It works inside Excel only. In Excel, choose Home, then Add-ins, and open Measure Book there."],
    again: false,
  },
  unreachable: {
    title: "Excel’s connection could not be loaded",
    says: [
      "This page needs Office.js, which links it to your workbook. It comes from Microsoft’s network, at appsforoffice.microsoft.com, and could not be fetched. Your workbook is as you left it; the FIT functions in it wait until the connection is there.",
      "Check that this computer is on the internet, and that no filter or firewall holds that address back. Then try again.",
    ],
    again: true,
  },
  "no answer": {
    title: "Excel has not answered yet",
    says: [
      "Measure Book is waiting for Excel, which can take a while on a slow connection. It goes on by itself as soon as Excel answers. Your workbook is as you left it.",
      "If nothing happens: check the internet connection and try again. If that does not help, close the workbook and open it again.",
    ],
    again: true,
  },
  "too old": {
    title: "This Excel is too old for Measure Book",
    says: [
      "Measure Book needs Excel for Microsoft 365, Excel 2021 or later, or Excel on the web (ExcelApi 1.10). Update Excel, or open the workbook in Excel on the web.",
    ],
    again: false,
  },
};

/** What the page says where it has no workbook to work on: what is the matter, and how to get to work. */
export function OutsideExcel({ why }: { readonly why: Why }): ReactNode {
  const styles = useStyles();
  const { title, says, again } = words[why];
  return (
    <FluentProvider theme={paneTheme(useAppearance(browserServices))} className={styles.provider}>
      <div className={styles.page} role={why === "browser" ? undefined : "alert"}>
        <h1 className={styles.title}>{title}</h1>
        {says.map((text) => (
          <p key={text} className={styles.text}>
            {text}
          </p>
        ))}
        {again && (
          <Button
            appearance="primary"
            onClick={() => {
              window.location.reload();
            }}
          >
            Try again
          </Button>
        )}
        <p className={styles.text}>
          Without Excel, <Link href="index.html">open Measure Book with its own spreadsheet</Link>. It does
          the same work and opens and saves .xlsx files.
        </p>
      </div>
    </FluentProvider>
  );
}
