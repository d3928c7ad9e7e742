import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import type { Check } from "../../addin/fit/check.ts";
import { VerdictWords } from "./VerdictWords.tsx";

const useStyles = makeStyles({
  list: {
    listStyleType: "none",
    margin: 0,
    padding: 0,
    display: "flex",
    flexDirection: "column",
    gap: "8px",
  },
  card: {
    padding: "8px 12px",
    borderRadius: tokens.borderRadiusMedium,
    border: `1px solid ${tokens.colorNeutralStroke1}`,
    backgroundColor: tokens.colorNeutralBackground1,
    display: "flex",
    flexDirection: "column",
    gap: "4px",
  },
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
