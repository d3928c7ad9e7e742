import { quote } from "./quote.ts";

/** Characters of all the names that are offered in one message. */
const roomForNames = 70;
/** No name of a worksheet is longer; comparing longer texts letter by letter would take long. */
const longestName = 100;

/**
 * The names that somebody may have meant by `typed`, nearest first: few letters apart (added, dropped, replaced or
 * swapped with a neighbour), or one beginning with the other.
 *
 * @example nearNames("Wasit", ["Bust", "Waist", "Hip"]) // ["Waist"]
 */
export function nearNames(typed: string, names: readonly string[], count = 3): readonly string[] {
  const wanted = typed.trim().toLowerCase();
  if (wanted === "" || wanted.length > longestName) return [];
  return [...new Set(names)]
    .filter(({ length }) => length <= longestName)
    .map((name) => ({ name, apart: slips(wanted, name.trim().toLowerCase()) }))
    .filter(({ apart }) => apart < Infinity)
    .sort((a, b) => a.apart - b.apart)
    .slice(0, count)
    .map(({ name }) => name);
}

/** “Did you mean …?” with a leading space, or nothing. */
export function didYouMean(typed: string, names: readonly string[]): string {
  const all = nearNames(typed, names).map(quote);
  // Two long names are as much as a message has room for.
  const near = all.join("").length > roomForNames ? all.slice(0, 1) : all;
  return near.length > 0 ? ` Did you mean ${near.join(" or ")}?` : "";
}

/** Slips of the keyboard between two names, one for every four letters at most; Infinity beyond that. */
function slips(a: string, b: string): number {
  if (Math.min(a.length, b.length) >= 3 && (a.startsWith(b) || b.startsWith(a))) return 1;
  const most = Math.max(1, Math.floor(Math.max(a.length, b.length) / 4));
  // The lengths alone may rule it out, which keeps long lists fast.
  if (Math.abs(a.length - b.length) > most) return Infinity;
  const apart = lettersApart(a, b);
  return apart <= most && apart < Math.min(a.length, b.length) ? apart : Infinity;
}

/** Optimal string alignment distance (Damerau 1964): the fewest letters added, dropped, replaced or swapped. */
function lettersApart(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const replaced = at(last, j - 1) + (a[i - 1] === b[j - 1] ? 0 : 1);
      const swapped =
        i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]
          ? at(beforeLast, j - 2) + 1
          : Infinity;
      row.push(Math.min(replaced, swapped, at(last, j) + 1, at(row, j - 1) + 1));
    }
    beforeLast = last;
    last = row;
  }
  return at(last, b.length);
}

function at(row: readonly number[], j: number): number {
  return row[j] ?? Infinity;
}
