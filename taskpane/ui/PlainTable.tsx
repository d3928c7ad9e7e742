import { Button, makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useRef } from "react";
import { useSession } from "../shell/session.ts";
import { meaning } from "./theme.ts";
import { isAmount } from "./words.ts";

const useStyles = makeStyles({
  box: {
    overflowX: "auto",
    border: `1px solid ${tokens.colorNeutralStroke1}`,
    borderRadius: tokens.borderRadiusMedium,
    backgroundColor: tokens.colorNeutralBackground1,
    "&:focus-visible": { outline: `2px solid ${meaning.chalk}`, outlineOffset: "1px" },
  },
  table: {
    borderCollapse: "collapse",
    width: "100%",
    "& th, & td": {
      padding: "4px 8px",
      textAlign: "left",
      verticalAlign: "top",
      borderBottom: `1px solid ${tokens.colorNeutralStroke1}`,
    },
    "& tbody tr:last-child > *": { borderBottom: "none" },
    "& .amount": { textAlign: "right" },
  },
  kept: { whiteSpace: "nowrap" },
  copy: { alignSelf: "flex-start" },
});

/** A table of words: a heading for each column, and each row under the name in its first cell. Numbers stand at the right. */
export function PlainTable(props: {
  readonly label: string;
  readonly headings: readonly string[];
  readonly rows: readonly (readonly ReactNode[])[];
  /** Columns whose words may be broken into lines, from 0; no other is but the first. */
  readonly wordy?: readonly number[];
  /** All rows, where only the first of them are shown: what is copied. */
  readonly all?: readonly (readonly string[])[];
}): ReactNode {
  const styles = useStyles();
  const { label, headings, rows, wordy = [], all } = props;
  const table = useRef<HTMLTableElement>(null);
  const amounts = headings.map((_, c) => c > 0 && isOfAmounts(rows.map((row) => row[c])));
  return (
    <>
      <div className={styles.box} role="group" aria-label={label} tabIndex={0}>
        <table ref={table} className={styles.table}>
          <thead>
            <tr>
              {headings.map((heading, c) => (
                <th key={heading} scope="col" className={amounts[c] ? "amount" : undefined}>
                  {heading}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(([name, ...cells], i) => (
              <tr key={i}>
                {name === "" ? <td /> : <th scope="row">{name}</th>}
                {cells.map((cell, c) => (
                  <td
                    key={c}
                    className={mergeClasses(
                      !wordy.includes(c + 1) && styles.kept,
                      amounts[c + 1] === true && "amount",
                    )}
                  >
                    {cell}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <CopyTable
        label={label}
        className={styles.copy}
        rows={() => (all ? [headings, ...all] : shownRows(table.current))}
        onRefused={() => {
          if (table.current) window.getSelection()?.selectAllChildren(table.current);
        }}
      />
    </>
  );
}

/** Gives the whole table to the clipboard, its cells between tabs: what spreadsheets and letters take. */
function CopyTable(props: {
  readonly label: string;
  readonly className: string;
  readonly rows: () => readonly (readonly string[])[];
  /** Where the program does not let the pane copy. */
  readonly onRefused: () => void;
}): ReactNode {
  const { say } = useSession();
  const copy = async (): Promise<void> => {
    const rows = props.rows();
    try {
      await navigator.clipboard.writeText(rows.map((row) => row.join("\t")).join("\n"));
      say({
        kind: "done",
        text: `The table is copied, ${String(rows.length - 1)} rows under their headings. Paste it into a letter or a sheet.`,
      });
    } catch {
      props.onRefused();
      say({
        kind: "failed",
        text: "Copying is not allowed here. The table is selected: press Ctrl+C, on a Mac Cmd+C.",
      });
    }
  };
  return (
    <Button
      size="small"
      className={props.className}
      aria-label={`Copy as text: ${props.label}`}
      onClick={() => void copy()}
    >
      Copy as text
    </Button>
  );
}

function isOfAmounts(cells: readonly ReactNode[]): boolean {
  const filled = cells.filter((cell) => cell !== "" && cell !== undefined && cell !== null);
  return filled.length > 0 && filled.every((cell) => typeof cell === "string" && isAmount(cell));
}

/** What a table on the screen says, row by row. Signs that are there for the eye alone are left out. */
function shownRows(table: HTMLTableElement | null): readonly (readonly string[])[] {
  return [...(table?.rows ?? [])].map(({ cells }) =>
    [...cells].map((cell) => {
      const copy = cell.cloneNode(true);
      if (copy instanceof HTMLElement)
        for (const sign of copy.querySelectorAll("[aria-hidden=true]")) sign.remove();
      return (copy.textContent ?? "").replace(/\s+/g, " ").trim();
    }),
  );
}
