import { makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { meaning } from "./theme.ts";

const useStyles = makeStyles({
  list: {
    listStyleType: "none",
    margin: 0,
    padding: 0,
    display: "flex",
    flexWrap: "wrap",
    gap: "4px",
  },
  question: {
    minHeight: "32px",
    padding: "4px 8px",
    font: "inherit",
    textAlign: "left",
    color: meaning.chalk,
    backgroundColor: tokens.colorNeutralBackground1,
    border: `1px solid ${tokens.colorNeutralStroke1}`,
    borderRadius: tokens.borderRadiusMedium,
    cursor: "pointer",
    "&:hover": { backgroundColor: meaning.chalkGround },
    "&:focus-visible": { outline: `2px solid ${meaning.chalk}`, outlineOffset: "1px" },
  },
  current: {
    fontWeight: 600,
    color: tokens.colorNeutralForeground1,
    backgroundColor: meaning.chalkGround,
    boxShadow: `inset 0 -3px 0 ${meaning.chalk}`,
    // Neither ground nor shadow is drawn there.
    "@media (forced-colors: active)": { borderBottom: "3px solid Highlight" },
  },
});

/** The questions in the user’s words, all in sight. */
export function QuestionNav<Q extends string>(props: {
  /** What the questions are about: “Questions about fit”. */
  readonly label: string;
  readonly questions: readonly Q[];
  readonly words: Readonly<Record<Q, string>>;
  readonly question: Q;
  readonly onAsk: (question: Q) => void;
}): ReactNode {
  const styles = useStyles();
  const { label, questions, words, question: asked, onAsk } = props;
  return (
    <nav aria-label={label}>
      <ul className={styles.list}>
        {questions.map((question) => (
          <li key={question}>
            <button
              type="button"
              className={mergeClasses(styles.question, question === asked && styles.current)}
              aria-current={question === asked ? "true" : undefined}
              onClick={() => {
                onAsk(question);
              }}
            >
              {words[question]}
            </button>
          </li>
        ))}
      </ul>
    </nav>
  );
}
