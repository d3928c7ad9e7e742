import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import type { TableInfo } from "../../addin/workbook/port.ts";
import { failureText } from "../shell/notice.ts";
import { useSession } from "../shell/session.ts";
import { meaning } from "./theme.ts";

const useStyles = makeStyles({
  box: {
    padding: "8px 12px",
    borderRadius: tokens.borderRadiusMedium,
    backgroundColor: meaning.threadGround,
    border: `1px solid ${meaning.thread}`,
    overflowWrap: "anywhere",
  },
  word: {
    fontWeight: 600,
    color: meaning.thread,
    cursor: "pointer",
    "&:focus-visible": { outline: `2px solid ${meaning.chalk}`, outlineOffset: "1px" },
  },
  list: { margin: "4px 0 0", paddingLeft: "20px" },
});

/** Something to mend in a table. */
export interface TableProblem {
  /** Rows and column within the table, from 0 (row 0 is the headings); the whole row without a column. */
  readonly rows: readonly number[];
  readonly column?: number | undefined;
  /** What was read and what to do. */
  readonly message: string;
}

/** Messages shown; the rest are counted. */
const mostShown = 8;

/** What has to be mended in a table, with a way to each place. */
export function ProblemList(props: {
  /** “3 rows are left out until mended” */
  readonly title: string;
  readonly problems: readonly TableProblem[];
  readonly table: TableInfo;
  /** Unfolded from the start. */
  readonly open: boolean;
}): ReactNode {
  const styles = useStyles();
  const { workbook, say } = useSession();
  const { title, problems, table, open } = props;
  if (problems.length === 0) return null;
  const show = async (row: number, column: number | undefined): Promise<void> => {
    const { area } = table;
    const across = column === undefined ? {} : { column: area.column + column, columns: 1 };
    try {
      await workbook.select({ ...area, row: area.row + row, rows: 1, ...across });
    } catch (error) {
      say({ kind: "failed", text: failureText(error) });
    }
  };
  const more = problems.length - mostShown;
  return (
    <details className={styles.box} open={open}>
      <summary className={styles.word}>✕ {title}</summary>
      <ul className={styles.list}>
        {problems.slice(0, mostShown).map(({ rows, column, message }) => (
          <li key={message}>
            {message}{" "}
            {rows.map((row) => (
              <Button key={row} size="small" onClick={() => void show(row, column)}>
                Show row {row + 1}
              </Button>
            ))}
          </li>
        ))}
      </ul>
      {more > 0 && <span>and {more} more.</span>}
    </details>
  );
}
