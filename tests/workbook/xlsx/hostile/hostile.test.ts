import { describe, expect, it } from "vitest";
import { demoWorkbook } from "../../../../addin/demo/demoWorkbook.ts";
import { InputError } from "../../../../addin/measures/inputError.ts";
import { limits } from "../../../../addin/workbook/limits.ts";
import { readXlsx } from "../../../../addin/workbook/xlsx/readXlsx.ts";
import { writeXlsx } from "../../../../addin/workbook/xlsx/writeXlsx.ts";
import { seeded } from "../../../similarity/condensedOf.ts";
import { hostileFiles } from "./hostileFiles.ts";

describe("a hostile file", () => {
  it.each(hostileFiles)("$name is refused in words, or opens", async ({ make, refused, leftOut }) => {
    const outcome = await readXlsx(make()).catch((error: unknown) => error);
    if (refused) {
      expect(outcome).toBeInstanceOf(InputError);
      expect(String(outcome)).toMatch(refused);
    } else {
      expect(outcome).toMatchObject({ sheets: [{ name: "First" }] });
      if (leftOut) expect((outcome as { leftOut: string[] }).leftOut.join("; ")).toMatch(leftOut);
    }
  });

  it("is refused by its bytes before it is looked into", async () => {
    await expect(readXlsx(new Uint8Array(limits.fileBytes + 1))).rejects.toThrow(
      /The file has 65 MB; at most 64 MB can be opened\./,
    );
  });
});

describe("a damaged workbook", async () => {
  const { bytes: whole } = await writeXlsx(demoWorkbook());
  const before = await readXlsx(whole);

  it("is refused wherever it is cut short (200 places)", async () => {
    for (let i = 0; i < 200; i++) {
      const cut = whole.slice(0, Math.floor((whole.length * i) / 200));
      await expect(readXlsx(cut), `cut after ${String(cut.length)} bytes`).rejects.toBeInstanceOf(InputError);
    }
  });

  it("is refused, or says what it said before, whatever bit is flipped (300 places)", async () => {
    const random = seeded(8);
    let refusals = 0;
    for (let i = 0; i < 300; i++) {
      const flipped = whole.slice();
      const at = Math.floor(random() * whole.length);
      flipped[at] = (flipped[at] ?? 0) ^ (1 << Math.floor(random() * 8));
      const outcome = await readXlsx(flipped).catch((error: unknown) => error);
      if (outcome instanceof InputError) refusals++;
      else expect(outcome, `a bit of byte ${String(at)}`).toEqual(before);
    }
    expect(refusals).toBeGreaterThan(250);
  });
});

describe("a large chart", () => {
  it("of 5,000 figures by 40 measures opens whole", async () => {
    const cells = Array.from({ length: 5001 }, (_, r) =>
      Array.from({ length: 41 }, (_, c) => ({ value: r === 0 ? `Heading ${String(c)}` : r + c / 8 })),
    );
    const tables = [{ name: "Figures", row: 0, column: 0, rows: 5001, columns: 41 }];
    const { sheets, leftOut } = await readXlsx(
      (await writeXlsx({ sheets: [{ name: "Chart", cells, tables }] })).bytes,
    );
    expect(leftOut).toEqual([]);
    expect(sheets[0]?.cells).toEqual(cells);
    expect(sheets[0]?.tables).toEqual(tables);
  });
});
