import type { ReactNode } from "react";
import type { Fitting, Match } from "../../addin/fit/match.ts";
import type { TableInfo } from "../../addin/workbook/port.ts";
import { WriteBox } from "../shell/WriteBox.tsx";
import type { MatrixPart } from "./matrix.ts";
import type { Fit } from "./readFit.ts";
import type { Asked } from "./writeAnswer.ts";
import { planAnswer } from "./writeAnswer.ts";
import { planMatrix } from "./writeMatrix.ts";

const forms = {
  formulas: "As a formula that follows every change",
  values: "As words that stay as they are",
} as const;

/** Writes the answer to one of the other questions to a new sheet. */
export function WriteAnswer(props: {
  readonly fit: Fit;
  readonly fitting: Fitting;
  readonly question: Asked;
  readonly asked: number;
}): ReactNode {
  const { fit, fitting, question, asked } = props;
  return (
    <WriteBox
      forms={forms}
      plan={(form) => planAnswer(form, question, { ...fit, readings: tableOfErrors(fit) }, fitting)}
      asked={asked}
    />
  );
}

/** Writes the matrix to a new sheet, after saying what will stand where. */
export function WriteMatrix(props: {
  readonly fit: Fit;
  readonly match: Match;
  readonly part: MatrixPart;
  /** Counts up when the user asks to write from elsewhere: the box comes into view. */
  readonly asked: number;
}): ReactNode {
  const { fit, match, part, asked } = props;
  const matrix = {
    match,
    part,
    used: fit.used,
    hasOwnClasses: fit.hasOwnClasses,
    readings: tableOfErrors(fit),
    problems: fit.problems.length,
    sheets: fit.sheets,
  };
  return <WriteBox forms={forms} plan={(form) => planMatrix(form, matrix)} asked={asked} />;
}

/** Where the errors of readings come from that the verdicts go by; `undefined` where the formula finds them itself. */
function tableOfErrors({ second }: Fit): TableInfo | undefined {
  return second?.errors.ofMeasures && (second.known.table ?? second.table);
}
