import { makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { meaning } from "../theme.ts";
import type { Question } from "./questions.ts";
import { questions, questionWords } from "./questions.ts";

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
  },
});

/** The questions in the user’s words, all in sight. */
export function QuestionNav(props: {
  readonly question: Question;
  readonly onAsk: (question: Question) => void;
}): ReactNode {
  const styles = useStyles();
  return (
    <nav aria-label="Questions about fit">
      <ul className={styles.list}>
        {questions.map((question) => (
          <li key={question}>
            <button
              type="button"
              className={mergeClasses(styles.question, question === props.question && styles.current)}
              aria-current={question === props.question ? "true" : undefined}
              onClick={() => {
                props.onAsk(question);
              }}
            >
              {questionWords[question]}
            </button>
          </li>
        ))}
      </ul>
    </nav>
  );
}
