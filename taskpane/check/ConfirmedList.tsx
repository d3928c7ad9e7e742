import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { Disclosure } from "../ui/Disclosure.tsx";
import { count } from "../ui/words.ts";
import type { Confirmed } from "./confirmed.ts";
import { confirmedWords } from "./confirmed.ts";
import { plainList } from "../ui/boxes.ts";

const useStyles = makeStyles({
  list: plainList,
  item: { display: "flex", justifyContent: "space-between", alignItems: "center", gap: "8px" },
  text: { overflowWrap: "anywhere" },
  quiet: { color: tokens.colorNeutralForeground3 },
});

/** Readings that the user said are right, each with a way to have it checked again. */
export function ConfirmedList(props: {
  readonly confirmed: readonly Confirmed[];
  readonly disabled: boolean;
  readonly onTakeBack: (confirmed: Confirmed) => void;
}): ReactNode {
  const styles = useStyles();
  const { confirmed, disabled, onTakeBack } = props;
  if (confirmed.length === 0) return null;
  return (
    <Disclosure title={`✓ ${count(confirmed.length, "reading")} confirmed by you`}>
      <ul className={styles.list}>
        {confirmed.map((row) => (
          <li key={row.row} className={styles.item}>
            <span className={styles.text}>
              {confirmedWords(row)} <span className={styles.quiet}>{row.date}</span>
            </span>
            <Button
              disabledFocusable={disabled}
              aria-label={`Check again: ${confirmedWords(row)}`}
              onClick={() => {
                onTakeBack(row);
              }}
            >
              Check again
            </Button>
          </li>
        ))}
      </ul>
    </Disclosure>
  );
}
