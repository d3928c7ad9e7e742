import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useSession } from "./session.ts";

const useStyles = makeStyles({
  box: { display: "flex", flexDirection: "column", alignItems: "flex-start", gap: "8px" },
  text: { margin: 0, color: tokens.colorNeutralForeground2 },
});

/** For an empty workbook: the invented maker’s sheets, added as one action that can be undone. */
export function OfferDemo(): ReactNode {
  const styles = useStyles();
  const { apply, working } = useSession();
  const open = async (): Promise<void> => {
    const { demoWorkbook } = await import("../../addin/demo/demoWorkbook.ts");
    const { sheets } = demoWorkbook();
    await apply(
      "Add the demo",
      sheets.map((sheet) => ({ kind: "sheet", sheet })),
      {
        kind: "done",
        text: `The demo is in the workbook, on the sheets ${sheets.map((s) => s.name).join(", ")}.`,
      },
    );
  };
  return (
    <div className={styles.box}>
      <p className={styles.text}>
        No chart at hand? The demo brings an invented maker, her figures and their readings, with some slips
        to find.
      </p>
      <Button disabledFocusable={working !== undefined} onClick={() => void open()}>
        Add the demo
      </Button>
    </div>
  );
}
