import { InputError } from "../measures/inputError.ts";
import { quote } from "../measures/quote.ts";
import type { Pattern } from "./pattern.ts";

/**
 * Everything that is worn under a pattern, the innermost first, each once: what it is worn over, and what that is worn
 * over in turn.
 *
 * @param patternOf a pattern by its code
 * @throws {InputError} naming the codes, when a garment comes to be worn over itself or a code is unknown
 */
export function underLayers(
  pattern: Pattern,
  patternOf: (code: string) => Pattern | undefined,
): readonly Pattern[] {
  const layers = new Set<Pattern>();
  const walk = (outer: Pattern, path: readonly Pattern[]): void => {
    for (const code of outer.wornOver) {
      const inner = patternOf(code);
      if (!inner) throw new InputError(`${quote(code)} is not the code of a pattern.`, "absent");
      const from = path.indexOf(inner);
      if (from >= 0) throw circular([...path.slice(from), inner]);
      if (layers.has(inner)) continue;
      walk(inner, [...path, inner]);
      layers.add(inner);
    }
  };
  walk(pattern, [pattern]);
  return [...layers];
}

function circular(ring: readonly Pattern[]): InputError {
  const codes = ring.map(({ code }) => quote(code)).join(" over ");
  return new InputError(
    `The under-layers go round in a circle: ${codes}. Take one of them out of “Worn over”.`,
  );
}
