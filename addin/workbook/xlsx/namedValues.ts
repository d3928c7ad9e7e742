import { codeAlone } from "./formulaPieces.ts";

/**
 * The names that LET and LAMBDA give to values within a formula, for example `x` in `LET(x,2,x*x)`.
 * Files store them with a prefix of their own.
 */
export function namedValues(formula: string): ReadonlySet<string> {
  const code = codeAlone(formula);
  const names = [...code.matchAll(/(?<![\w.])(LET|LAMBDA)\(/gi)].flatMap((call) => {
    const given = callArguments(code, call.index + call[0].length).slice(0, -1);
    return call[1]?.toUpperCase() === "LET" ? given.filter((_, i) => i % 2 === 0) : given;
  });
  return new Set(names.map((name) => name.trim()).filter((name) => /^[\p{L}_][\p{L}\w.]*$/u.test(name)));
}

/** The arguments of a call, cut at its own commas. `start` is the place after the opening parenthesis. */
function callArguments(code: string, start: number): readonly string[] {
  const cuts = [start - 1];
  let depth = 0;
  let end = start;
  for (; end < code.length; end++) {
    const letter = code[end];
    if (letter === "(" || letter === "{") depth++;
    else if (letter === "," && depth === 0) cuts.push(end);
    else if (letter === ")" || letter === "}") {
      if (depth === 0) break;
      depth--;
    }
  }
  return cuts.map((cut, i) => code.slice(cut + 1, cuts[i + 1] ?? end));
}
