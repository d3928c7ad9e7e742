import { Button, makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";

const useStyles = makeStyles({ button: { alignSelf: "flex-start" } });

/** Shows more of a long list; nothing where all is shown. */
export function ShowMore(props: {
  /** “readings”; left out where there is no doubt what. */
  readonly what?: string;
  readonly left: number;
  readonly onMore: () => void;
}): ReactNode {
  const styles = useStyles();
  const { what, left, onMore } = props;
  if (left <= 0) return null;
  return (
    <Button className={styles.button} onClick={onMore}>
      Show more {what} ({left.toLocaleString("en-GB")} left)
    </Button>
  );
}
