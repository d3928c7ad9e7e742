import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { Fragment } from "react";
import { printCautions } from "../../addin/grading/printWords.ts";
import { Disclosure } from "../ui/Disclosure.tsx";
import { LengthField, typedLength } from "../ui/LengthField.tsx";
import { Part } from "../ui/Part.tsx";
import { PlainTable } from "../ui/PlainTable.tsx";
import type { Tone } from "../ui/SignedWords.tsx";
import { SignedWords } from "../ui/SignedWords.tsx";
import type { PrintView, Residual } from "./printView.ts";
import { allowanceSays } from "./printView.ts";

const useStyles = makeStyles({
  text: { margin: 0, overflowWrap: "anywhere" },
  number: { fontSize: tokens.fontSizeBase400, fontWeight: 600 },
  list: { margin: 0, paddingLeft: "20px" },
});

const looks: Readonly<Record<Residual["state"], { readonly sign: string; readonly tone: Tone }>> = {
  within: { sign: "●", tone: "leaf" },
  out: { sign: "▲", tone: "thread" },
  "no tolerance": { sign: "≈", tone: "brass" },
  missing: { sign: "?", tone: "quiet" },
};

const stateWords: Readonly<Record<Residual["state"], string>> = {
  within: "in",
  out: "out",
  "no tolerance": "no tolerance",
  missing: "left out",
};

/** What a print scale leaves at every measure. */
export function ResidualPart({ view }: { readonly view: PrintView }): ReactNode {
  const styles = useStyles();
  if (view.residuals.length === 0) return null;
  return (
    <Part title="What the print leaves">
      <p className={styles.text}>In or out of tolerance, worst first.</p>
      <PlainTable
        label="What the print leaves, worst first"
        headings={["Measure", "Left over", "Base", "Printed", "Target"]}
        rows={view.residuals.map(({ measure, state, words, base, printed, target }) => [
          measure,
          <Fragment key="left">
            <SignedWords {...looks[state]}>{stateWords[state]}</SignedWords>, {words}
          </Fragment>,
          base,
          printed,
          target,
        ])}
      />
    </Part>
  );
}

/** How to print at the scale, what to do with seam allowance, hems and closures, and how to check the print. */
export function PrintPart(props: {
  readonly view: PrintView;
  readonly allowance: string;
  readonly onAllowance: (text: string) => void;
}): ReactNode {
  const styles = useStyles();
  const { view, allowance, onAllowance } = props;
  if (view.settings.length === 0) return null;
  const typed = typedLength(allowance, view.unit);
  const body = (
    <>
      {view.settings.map(({ what, percent, says }) => (
        <p key={what} className={styles.text}>
          {what}: <span className={styles.number}>{percent} %</span>. {says}
        </p>
      ))}
      <LengthField
        label="Seam allowance on the pattern"
        hint="Leave empty for a pattern without."
        unit={view.unit}
        text={allowance}
        onChange={onAllowance}
      />
      {typeof typed === "number" &&
        typed > 0 &&
        allowanceSays(view, typed).map((says) => (
          <p key={says} className={styles.text}>
            {says}
          </p>
        ))}
      {view.square.map((says) => (
        <p key={says} className={styles.text}>
          {says}
        </p>
      ))}
      <ul className={styles.list}>
        {printCautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </>
  );
  if (view.verdict === "draft anew") {
    return (
      <Disclosure title="If you print it all the same" says={`${String(view.settings[0]?.percent)} %`}>
        {body}
      </Disclosure>
    );
  }
  return <Part title="How to print it">{body}</Part>;
}
