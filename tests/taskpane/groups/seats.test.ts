import { describe, expect, test } from "vitest";
import { doGroupJob } from "../../../taskpane/groups/jobs.ts";
import { seatsOf, seatsWords, seatWords } from "../../../taskpane/groups/seats.ts";
import { chartOf } from "../../similarity/chartOf.ts";

/** One measure, and a tolerance of 1 mm. */
function seated(rows: Readonly<Record<string, readonly number[]>>, groupOf: Int32Array) {
  const chart = chartOf(["Tail"], rows);
  const columns = chart.measures.map((column) => ({
    column,
    tolerance: { floorMm: 1, percent: 0 },
    required: false,
  }));
  const answer = doGroupJob(structuredClone({ kind: "seats", chart, columns, groupOf }));
  if (answer.kind !== "seats") throw new Error("The job has another answer.");
  const seats = seatsOf(chart, groupOf, answer.silhouette);
  const words = seats.map((seat) => `${chart.figures[seat.place] ?? ""} ${seatWords(chart, groupOf, seat)}`);
  return { seats, words, says: seatsWords(seats) };
}

describe("how well figures sit in their groups", () => {
  test("is said of every figure that shares, those that sit worst first", () => {
    const { seats, words, says } = seated(
      { Wren: [0], Tit: [2], Lark: [10], Finch: [12], Jay: [7] },
      Int32Array.of(1, 1, 2, 2, 1),
    );
    // (b − a) / max(a, b), Rousseeuw 1987. Jay: own (7 + 5) / 2 = 6, other (3 + 5) / 2 = 4, so (4 − 6) / 6.
    // Wren: own 4.5, other 11. Tit: own 3.5, other 9. Lark: own 2, other 7. Finch: own 2, other 9.
    expect(words).toEqual([
      "Jay nearer to group 2",
      "Wren sits well",
      "Tit sits well",
      "Lark sits well",
      "Finch sits well",
    ]);
    expect(seats[0]?.width).toBeCloseTo(-1 / 3, 12);
    expect(seats[1]?.width).toBeCloseTo(1 - 4.5 / 11, 12);
    expect(says).toBe("4 of 5 figures sit well; 1 is nearer to another.");
  });

  test("leaves out figures by themselves, but names them where they are near", () => {
    // Lark: own 4, Jay 5, so (5 − 4) / 5.
    const { words, says } = seated({ Wren: [0], Lark: [4], Jay: [9] }, Int32Array.of(1, 1, 2));
    expect(words).toEqual(["Lark between its group and Jay", "Wren sits well"]);
    expect(says).toBe("1 of 2 figures sits well; 1 lies between two groups.");
  });

  test("says where nobody can say, last", () => {
    const { words, says } = seated(
      { Ash: [Number.NaN], Wren: [0], Lark: [1], Jay: [9] },
      Int32Array.of(1, 1, 1, 2),
    );
    expect(words.at(-1)).toBe("Ash not known");
    expect(says).toBe("2 of 3 figures sit well; of 1 nobody can say.");
  });
});
