import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useEffect, useMemo, useRef, useState } from "react";
import type { CheckJob } from "../check/checkJob.ts";
import { plainList } from "../ui/boxes.ts";
import { failureText } from "../shell/notice.ts";
import { useSession } from "../shell/session.ts";
import { meaning } from "../ui/theme.ts";
import { useJob } from "../work/useJob.ts";
import type { AskedCell, CellWords, ExplainJob } from "./explainCell.ts";
import { readSelectedCell } from "./explainCell.ts";
import { flagsIn } from "../check/useCheck.ts";

const useStyles = makeStyles({
  box: {
    margin: "8px",
    padding: "8px 12px",
    flexShrink: 0,
    maxHeight: "45%",
    overflowY: "auto",
    display: "flex",
    flexDirection: "column",
    gap: "8px",
    borderRadius: tokens.borderRadiusMedium,
    border: `1px solid ${meaning.chalk}`,
    backgroundColor: tokens.colorNeutralBackground1,
    overflowWrap: "anywhere",
    "&:focus-visible": { outline: `2px solid ${meaning.chalk}`, outlineOffset: "1px" },
  },
  title: { margin: 0, fontSize: tokens.fontSizeBase400, fontWeight: 600 },
  text: { margin: 0 },
  list: plainList,
  look: { borderLeft: `3px solid ${meaning.brass}`, paddingLeft: "8px" },
  word: { fontWeight: 600, color: meaning.brass },
  head: { display: "flex", justifyContent: "space-between", alignItems: "flex-start", gap: "8px" },
  again: { alignSelf: "flex-start" },
});

/** What the selected cell holds or shows, above whatever section is open; asked for by an errand, closed by the user. */
export function CellBox(): ReactNode {
  const styles = useStyles();
  const { workbook, freshBook, errand, ask, say } = useSession();
  const [asked, setAsked] = useState<AskedCell>();
  const chart = asked?.chart;
  // The check that the section Check and Home have of the same chart, or give to them.
  const checking = useMemo((): CheckJob | undefined => chart && { kind: "check", chart }, [chart]);
  const check = useJob(checking, flagsIn);
  const flags = check.answer;
  const job = useMemo(
    (): ExplainJob | undefined => asked && flags && { kind: "explain", ...asked, flags },
    [asked, flags],
  );
  const explained = useJob(job, (answer) => (answer.kind === "explain" ? answer.words : undefined));
  const [told, setTold] = useState<CellWords>();
  const words = told ?? explained.answer;
  const failure = check.failure ?? explained.failure;
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (errand?.kind !== "explain") return;
    let current = true;
    readSelectedCell(workbook, freshBook()).then(
      (found) => {
        if (!current) return;
        setAsked("title" in found ? undefined : found);
        setTold("title" in found ? found : undefined);
        say(undefined);
      },
      (error: unknown) => {
        if (!current) return;
        setAsked(undefined);
        setTold(undefined);
        say({ kind: "failed", text: failureText(error) });
      },
    );
    return () => {
      current = false;
    };
  }, [workbook, freshBook, errand, say]);
  useEffect(() => {
    if (words) box.current?.focus();
  }, [words]);
  useEffect(() => {
    if (failure !== undefined) say({ kind: "failed", text: failure });
  }, [failure, say]);
  if (!words) return null;
  return (
    <div ref={box} tabIndex={-1} className={styles.box} role="region" aria-label="The selected cell">
      <div className={styles.head}>
        <h2 className={styles.title}>{words.title}</h2>
        <Button
          size="small"
          onClick={() => {
            setAsked(undefined);
            setTold(undefined);
          }}
        >
          Close
        </Button>
      </div>
      {words.looks.length > 0 && (
        <ul className={styles.list}>
          {words.looks.map(({ kind, why }) => (
            <li key={`${kind} ${why}`} className={styles.look}>
              <span className={styles.word}>◆ Look here: {kind}.</span> {why}
            </li>
          ))}
        </ul>
      )}
      {words.says.map((text) => (
        <p key={text} className={styles.text}>
          {text}
        </p>
      ))}
      <Button
        size="small"
        className={styles.again}
        onClick={() => {
          ask("explain");
        }}
      >
        Explain the cell selected now
      </Button>
    </div>
  );
}
