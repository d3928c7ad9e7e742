import { makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import type { Verdict } from "../../addin/fit/verdict.ts";
import { verdicts } from "../../addin/fit/verdict.ts";
import { Choice } from "../ui/Choice.tsx";
import type { MatrixFilter } from "./matrix.ts";
import { verdictLooks } from "./verdictLooks.ts";

const useStyles = makeStyles({
  pair: {
    display: "grid",
    gridTemplateColumns: "repeat(auto-fit, minmax(128px, 1fr))",
    gap: "8px",
    "> *": { minWidth: 0 },
  },
});

/** Which verdicts, and where it makes a difference which garments, are shown. */
export function FilterChoices(props: {
  readonly filter: MatrixFilter;
  /** Names of the classes that patterns have; `undefined` offers no choice of class. */
  readonly classes: readonly string[] | undefined;
  readonly onChange: (filter: MatrixFilter) => void;
}): ReactNode {
  const styles = useStyles();
  const { filter, classes, onChange } = props;
  return (
    <div className={styles.pair}>
      {classes && (
        <Choice
          label="Garments"
          value={filter.garmentClass ?? ""}
          options={[["", "All"], ...classes.map((name) => [name, name] as const)]}
          onChoose={(value) => {
            onChange({ ...filter, garmentClass: value === "" ? undefined : value });
          }}
        />
      )}
      <Choice<Verdict | "">
        label="Verdicts"
        value={filter.verdict ?? ""}
        options={[
          ["", "All"],
          ...verdicts.map((verdict) => [verdict, `${verdictLooks[verdict].sign} ${verdict}`] as const),
        ]}
        onChoose={(value) => {
          onChange({ ...filter, verdict: value === "" ? undefined : value });
        }}
      />
    </div>
  );
}
