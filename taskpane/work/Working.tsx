import { Button, makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { FailureBox } from "../ui/FailureBox.tsx";
import type { Working } from "./useJob.ts";

const useStyles = makeStyles({
  box: { display: "flex", flexWrap: "wrap", alignItems: "center", gap: "8px" },
  text: { margin: 0 },
});

/** What is being done in words, with a way to cancel it; or that it was cancelled or failed; else nothing. */
export function WorkingWords(props: {
  readonly working: Pick<Working<unknown>, "isWorking" | "isCancelled" | "failure" | "cancel" | "again">;
  /** “Comparing 5,000 figures” */
  readonly doing: string;
}): ReactNode {
  const styles = useStyles();
  const { working, doing } = props;
  const { isWorking, isCancelled, failure, cancel, again } = working;
  if (failure !== undefined) return <FailureBox what="Could not be done." why={failure} />;
  if (!isWorking && !isCancelled) return null;
  return (
    <div className={styles.box} role="status">
      <p className={styles.text}>{isWorking ? `${doing} …` : `Cancelled: ${doing.toLowerCase()}.`}</p>
      <Button size="small" onClick={isWorking ? cancel : again}>
        {isWorking ? "Cancel" : "Start again"}
      </Button>
    </div>
  );
}
