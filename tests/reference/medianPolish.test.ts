import { describe, expect, it } from "vitest";
import { readChart } from "../../addin/chart/readChart.ts";
import { checkChart } from "../../addin/checking/checkChart.ts";
import { medianPolish } from "../../addin/checking/medianPolish.ts";
import { modifiedZ } from "../../addin/checking/modifiedZ.ts";
import { body10Cm } from "./body10.ts";

const headings = "ShoulderG ChestG WaistG AbdG HipG ThighG BicepG ForearmG KneeG CalfG AnkleG WristG".split(
  " ",
);
const logs = body10Cm.map((row) => row.map(Math.log));
const exact = { eps: 1e-9, maxIterations: 100 };

// Expected values: R 4.2.2, x holding the table above,
//   m <- medpolish(log(x), eps = 1e-9, maxiter = 100); print(m$overall, digits = 15); print(m$row, digits = 12)
describe("median polish of ln(girth)", () => {
  const polish = medianPolish(logs, exact);

  it("gives the effects of R’s medpolish", () => {
    expect(polish.overall).toBeCloseTo(3.81665144162869, 13);
    const rows = [
      -0.071259987644474, -0.001669431274577, 0.000625555845569, -0.030521370141819, 0.021479642908911,
      -0.000625555845569, 0.078998051225131, 0.007879634002702, -0.067922940402908, 0.034485235921244,
    ];
    const columns = [
      0.924557990734, 0.76235319291, 0.534100772926, 0.566328819846, 0.748717793848, 0.198505484395,
      -0.286079568658, -0.485558145785, -0.205059455655, -0.198084035952, -0.65835575625, -0.969259999571,
    ];
    polish.rows.forEach((effect, i) => expect(effect).toBeCloseTo(rows[i]!, 11));
    polish.columns.forEach((effect, j) => expect(effect).toBeCloseTo(columns[j]!, 11));
    expect(polish.converged).toBe(true);
  });

  it("finds one reading beyond 3.5: the upper arm of the seventh man", () => {
    const z = modifiedZ(polish.residuals.flat());
    const beyond = z.flatMap((value, k) => (Math.abs(value) > 3.5 ? [k] : []));
    expect(beyond.map((k) => [Math.floor(k / 12) + 1, headings[k % 12]])).toEqual([[7, "BicepG"]]);
    expect(Math.max(...z.map(Math.abs))).toBeCloseTo(4.66111858193, 9);
  });

  // The same in R with y[3,4] <- NA; y[7,7] <- NA; y[1,1:11] <- NA and na.rm = TRUE.
  it("agrees with R when readings are missing", () => {
    const holes = logs.map((row) => [...row]);
    holes[2]![3] = Number.NaN;
    holes[6]![6] = Number.NaN;
    holes[0]!.fill(Number.NaN, 0, 11);
    const { overall, rows } = medianPolish(holes, exact);
    expect(overall).toBeCloseTo(3.81905798863487, 13);
    const expected = [
      -0.03155633008998, -0.00170336378203, -0.00746147866454, -0.02357704537777, 0.01588799877399,
      0.00170336378203, 0.07030717535251, 0.01328000670972, -0.07069623211072, 0.02713924387425,
    ];
    rows.forEach((effect, i) => expect(effect).toBeCloseTo(expected[i]!, 11));
  });
});

// Real bodies, correctly measured: a chart check that is fit for use should let them pass.
it("raises no flag on the ten men, though the plain method has one", () => {
  const names = body10Cm.map((row, i) => [`Man ${String(i + 1)}`, ...row]);
  expect(checkChart(readChart([["Man", ...headings], ...names], { unit: "cm" }))).toEqual([]);
});
