import { makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { createContext, useContext, useId } from "react";
import { inRem } from "./letters.ts";

const useStyles = makeStyles({ drawing: { display: "block", overflow: "visible" } });

/** What a drawing shows, for those who do not see it. */
export interface DrawingWords {
  readonly title: string;
  readonly description: string;
}

export const DrawingWordsContext = createContext<DrawingWords | undefined>(undefined);

/** A drawing of a size in units of a drawing, inside a `DrawingFrame`, which has its words. */
export function Drawing(props: {
  readonly width: number;
  readonly height: number;
  readonly children: ReactNode;
}): ReactNode {
  const styles = useStyles();
  const id = useId();
  const words = useContext(DrawingWordsContext);
  const { width, height, children } = props;
  return (
    <svg
      className={styles.drawing}
      width={inRem(width)}
      height={inRem(height)}
      viewBox={`0 0 ${String(width)} ${String(height)}`}
      role="img"
      aria-labelledby={`${id}-title`}
      aria-describedby={`${id}-says`}
    >
      <title id={`${id}-title`}>{words?.title}</title>
      <desc id={`${id}-says`}>{words?.description}</desc>
      {children}
    </svg>
  );
}
