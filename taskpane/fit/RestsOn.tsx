import { Button, makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useMemo } from "react";
import { doubts } from "../../addin/checking/doubts.ts";
import type { Fitting } from "../../addin/fit/match.ts";
import { restsOn, restWords } from "../../addin/fit/restsOn.ts";
import { useCheck } from "../check/useCheck.ts";
import { useSession } from "../shell/session.ts";
import { meaning } from "../ui/theme.ts";
import type { Pair } from "./ranking.ts";
import type { Fit } from "./readFit.ts";

const useStyles = makeStyles({
  box: {
    padding: "8px 12px",
    display: "flex",
    flexDirection: "column",
    alignItems: "flex-start",
    gap: "8px",
    borderLeft: `3px solid ${meaning.brass}`,
    backgroundColor: meaning.brassGround,
    overflowWrap: "anywhere",
    marginTop: "8px",
  },
  text: { margin: 0 },
});

/**
 * The doubtful readings that the answer about a pair rests on, and whether it would change if they were mended; nothing where
 * it rests on none, and while the chart is being checked. What somebody has confirmed is no doubt.
 *
 */
export function RestsOn(props: {
  readonly fit: Fit;
  readonly fitting: Fitting;
  readonly pair: Pair;
}): ReactNode {
  const styles = useStyles();
  const { fit, fitting, pair } = props;
  const { pattern, figure } = pair;
  const { used, rules } = fit;
  const { goTo } = useSession();
  const checked = useCheck(used.figures?.name).check?.checked;
  const { chart } = fitting.view;
  const flags = checked?.chart === chart ? checked.flags : undefined;
  const doubtful = useMemo(() => flags && doubts(chart, flags), [chart, flags]);
  const grounds = useMemo(
    () => (doubtful ? restsOn(fitting, pattern, figure, doubtful, rules) : []),
    [fitting, pattern, figure, doubtful, rules],
  );
  if (grounds.length === 0) return null;
  return (
    <div className={styles.box}>
      {grounds.map((ground) => (
        <p key={ground.says} className={styles.text}>
          {restWords(ground, "Check")}
        </p>
      ))}
      <Button
        size="small"
        onClick={() => {
          goTo("check");
        }}
      >
        Look at it in Check
      </Button>
    </div>
  );
}
