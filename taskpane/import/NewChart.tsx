import { Button, makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useEffect, useRef, useState } from "react";
import type { LengthUnit } from "../../addin/measures/units.ts";
import type { SheetContent } from "../../addin/workbook/content.ts";
import { Choice } from "../ui/Choice.tsx";
import { Disclosure } from "../ui/Disclosure.tsx";
import { failureText } from "../shell/notice.ts";
import { useSession } from "../shell/session.ts";
import { count, unitNames } from "../ui/words.ts";
import { newChartSheets } from "./newChartSheets.ts";

const useStyles = makeStyles({
  place: { scrollMarginTop: "56px", "&:focus-visible": { outlineStyle: "none" } },
  text: { margin: 0 },
  button: { alignSelf: "flex-start" },
});

/** Sheets to write a first chart into: asks for the unit, says what will be added, and adds it as one action. */
export function NewChart({ sheets }: { readonly sheets: readonly string[] }): ReactNode {
  const styles = useStyles();
  const { workbook, book, apply, working, errand, say } = useSession();
  const [unit, setUnit] = useState<LengthUnit>("mm");
  const [isOpen, setOpen] = useState(false);
  const [planned, setPlanned] = useState<readonly SheetContent[]>();
  const place = useRef<HTMLDivElement>(null);

  useEffect(() => {
    if (errand?.kind !== "newChart") return;
    setOpen(true);
    place.current?.focus();
  }, [errand]);

  // Once it is as tall as it gets.
  useEffect(() => {
    if (errand?.kind === "newChart" && planned) place.current?.scrollIntoView();
  }, [errand, planned]);

  useEffect(() => {
    if (!isOpen) return;
    let current = true;
    const plan = async (): Promise<readonly SheetContent[]> =>
      newChartSheets(unit, { sheets, tables: (await book.tables()).map(({ name }) => name) });
    plan().then(
      (made) => {
        if (current) setPlanned(made);
      },
      (error: unknown) => {
        if (current) say({ kind: "failed", text: failureText(error) });
      },
    );
    return () => {
      current = false;
    };
  }, [isOpen, unit, sheets, book, say]);

  const add = async (made: readonly SheetContent[]): Promise<void> => {
    const edits = made.map((sheet) => ({ kind: "sheet", sheet }) as const);
    const chart = made.find(({ name }) => name.startsWith("Figures"))?.name ?? "";
    const done = await apply("Add a new measurement chart", edits, {
      kind: "done",
      text: `${count(made.length, "sheet is", "sheets are")} added. Write your figures on the sheet ${chart}, one row each.`,
    });
    if (!done) return;
    setOpen(false);
    try {
      await workbook.select({ sheet: chart, row: 0, column: 0, rows: 1, columns: 1 });
    } catch (error) {
      say({ kind: "failed", text: failureText(error) });
    }
  };

  return (
    <div ref={place} tabIndex={-1} className={styles.place}>
      <Disclosure
        title="New measurement chart"
        says="empty sheets to write into"
        open={isOpen}
        onToggle={setOpen}
      >
        <Choice label="Lengths are in" value={unit} options={unitNames} onChoose={setUnit} />
        {planned && (
          <>
            <p className={styles.text}>
              {planned.length === 1
                ? `This workbook has sheets of these names already, so the chart alone is added: ${namesOf(planned)}.`
                : `Will be added: ${namesOf(planned)}. Nothing that is in the workbook changes.`}
            </p>
            <Button
              className={styles.button}
              appearance="primary"
              disabledFocusable={working !== undefined}
              onClick={() => void add(planned)}
            >
              Add {count(planned.length, "sheet")}
            </Button>
          </>
        )}
      </Disclosure>
    </div>
  );
}

function namesOf(sheets: readonly SheetContent[]): string {
  return sheets.map(({ name }) => name).join(", ");
}
