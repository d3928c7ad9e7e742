import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import ts from "typescript";
import { expect, it } from "vitest";

/** Files of the project by what they import of it at once, types too; what is fetched later does not count. */
function imports(): Map<string, readonly string[]> {
  const files = ["addin", "functions", "manifest", "taskpane", "tests"].flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: "utf8" })
      .filter((file) => /\.(tsx?|mjs)$/u.test(file))
      .map((file) => path.join(folder, file)),
  );
  return new Map(
    files.map((file) => {
      const source = ts.createSourceFile(file, readFileSync(file, "utf8"), ts.ScriptTarget.Latest);
      const named = source.statements.flatMap((statement) =>
        (ts.isImportDeclaration(statement) || ts.isExportDeclaration(statement)) &&
        statement.moduleSpecifier &&
        ts.isStringLiteral(statement.moduleSpecifier) &&
        statement.moduleSpecifier.text.startsWith(".")
          ? [path.join(path.dirname(file), statement.moduleSpecifier.text)]
          : [],
      );
      return [file, named] as const;
    }),
  );
}

/** What is left when files that import nothing of the rest are taken away again and again: those in circles, and what imports them. */
function inCircles(all: ReadonlyMap<string, readonly string[]>): readonly string[] {
  const left = new Map(all);
  for (;;) {
    const free = [...left].filter(([, named]) => !named.some((file) => left.has(file)));
    if (free.length === 0) return [...left.keys()];
    for (const [file] of free) left.delete(file);
  }
}

// The lint rule for it (import-x/no-cycle) passes over imports of types, and takes half of all the time of linting: whoever reads
// one file of a circle of types still has to read the other.
it("no files import one another in a circle, types included", () => {
  const all = imports();
  expect(all.size).toBeGreaterThan(1000);
  expect(inCircles(all)).toEqual([]);
  // A circle is found, with what hangs on it.
  expect(inCircles(new Map(Object.entries({ a: ["b"], b: ["c"], c: ["b"], d: [] })))).toEqual([
    "a",
    "b",
    "c",
  ]);
});
