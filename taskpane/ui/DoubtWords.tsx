import { Button, makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useSession } from "../shell/session.ts";
import { plainList } from "./boxes.ts";
import { SignedWords } from "./SignedWords.tsx";
import { meaning } from "./theme.ts";

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
  },
  text: { margin: 0 },
  list: { ...plainList, gap: "4px" },
  each: { overflowWrap: "anywhere" },
});

/** The sign of a reading to look at again, as in Check. */
export const doubtSign = "◆";

/** The mark of an answer that rests on a doubtful reading. */
export function DoubtWords(): ReactNode {
  return (
    <SignedWords sign={doubtSign} tone="brass">
      doubtful
    </SignedWords>
  );
}

/** What an answer rests on, a sentence or two for each doubtful reading, and the way to mend it; nothing where there is none. */
export function DoubtBox({ says }: { readonly says: readonly string[] }): ReactNode {
  const styles = useStyles();
  const { goTo } = useSession();
  if (says.length === 0) return null;
  return (
    <div className={styles.box}>
      {says.map((each) => (
        <p key={each} className={styles.text}>
          {each}
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

/** Names written out at most. */
const mostListed = 12;

/** What the answers about some figures rest on, figure by figure; nothing where there is none. */
export function DoubtList(props: {
  readonly label: string;
  readonly doubts: readonly { readonly name: string; readonly says: string }[];
}): ReactNode {
  const styles = useStyles();
  const { label, doubts } = props;
  if (doubts.length === 0) return null;
  const left = doubts.length - mostListed;
  return (
    <ul className={styles.list} aria-label={label}>
      {doubts.slice(0, mostListed).map(({ name, says }, i) => (
        <li key={i} className={styles.each}>
          <DoubtWords /> {name}: {says}
        </li>
      ))}
      {left > 0 && <li>and {left.toLocaleString("en-GB")} more</li>}
    </ul>
  );
}
