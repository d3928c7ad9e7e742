import type { ReactNode } from "react";
import type { Check } from "../../addin/fit/check.ts";
import { lengthWords } from "../../addin/measures/lengthWords.ts";
import { PlainTable } from "../ui/PlainTable.tsx";
import { VerdictWords } from "./VerdictWords.tsx";

/** The checks as a table, for those who would rather read numbers. */
export function ChecksTable(props: { readonly label: string; readonly checks: readonly Check[] }): ReactNode {
  return (
    <PlainTable
      label={props.label}
      headings={["Check", "Verdict", "Needs", "Most", "Has", "Difference"]}
      rows={props.checks.map((check) => [
        check.place,
        <VerdictWords key="verdict" verdict={check.verdict} />,
        ...[check.needsMm, check.mostMm, check.hasMm, check.differenceMm].map((mm) =>
          mm === undefined ? "no limit" : lengthWords(mm, check.unit),
        ),
      ])}
    />
  );
}
