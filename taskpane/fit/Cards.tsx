import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import type { Check } from "../../addin/fit/check.ts";
import { VerdictWords } from "./VerdictWords.tsx";
import { card, plainList } from "../ui/boxes.ts";

const useStyles = makeStyles({
  list: plainList,
  card,
  head: { display: "flex", flexWrap: "wrap", columnGap: "8px", justifyContent: "space-between" },
  place: { margin: 0, fontSize: tokens.fontSizeBase300, fontWeight: 600 },
});

/** Cards, one below the other. */
export function Cards({ children }: { readonly children: ReactNode }): ReactNode {
  return <ul className={useStyles().list}>{children}</ul>;
}

/** What is said about one check, under its place and verdict. */
export function CardOfCheck(props: { readonly check: Check; readonly children: ReactNode }): ReactNode {
  const styles = useStyles();
  const { check, children } = props;
  return (
    <li className={styles.card}>
      <div className={styles.head}>
        <h3 className={styles.place}>{check.place}</h3>
        <VerdictWords verdict={check.verdict} />
      </div>
      {children}
    </li>
  );
}
