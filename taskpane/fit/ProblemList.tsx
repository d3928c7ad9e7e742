import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import type { PatternProblem } from "../../addin/chart/pattern.ts";
import type { TableInfo } from "../../addin/workbook/port.ts";
import { failureText } from "../notice.ts";
import { useSession } from "../session.ts";
import { meaning } from "../theme.ts";
import { count } from "../words.ts";

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

/** Messages shown; the rest are counted. */
const mostShown = 8;

/** Rows of the patterns that cannot be used: what was read, and what to do. The other patterns are judged all the same. */
export function ProblemList(props: {
  readonly problems: readonly PatternProblem[];
  readonly table: TableInfo;
  /** Unfolded from the start, where no other pattern is left. */
  readonly open: boolean;
}): ReactNode {
  const styles = useStyles();
  const { workbook, say } = useSession();
  const { problems, table, open } = props;
  if (problems.length === 0) return null;
  const show = async (row: number): Promise<void> => {
    try {
      await workbook.select({ ...table.area, row: table.area.row + row, rows: 1 });
    } catch (error) {
      say({ kind: "failed", text: failureText(error) });
    }
  };
  const more = problems.length - mostShown;
  return (
    <details className={styles.box} open={open}>
      <summary className={styles.word}>
        ✕ {count(problems.length, "row is", "rows are")} left out until mended
      </summary>
      <ul className={styles.list}>
        {problems.slice(0, mostShown).map(({ row, message }) => (
          <li key={row}>
            {message}{" "}
            <Button size="small" onClick={() => void show(row)}>
              Show row {row + 1}
            </Button>
          </li>
        ))}
      </ul>
      {more > 0 && <span>and {more} more.</span>}
    </details>
  );
}
