import type { Injector } from "@univerjs/core";
import { LexerTreeBuilder, sequenceNodeType } from "@univerjs/engine-formula";

type Parser = InstanceType<typeof LexerTreeBuilder>;
type Arguments<K extends "treeBuilder" | "getNewFormulaWithPrefix" | "getFormulaExprTree"> = Parameters<
  Parser[K]
>;

/**
 * A parser for each formula. The grid has one parser for what is typed and for what is calculated, and it keeps part of
 * its state (how many square brackets are open) from one formula to the next: a formula that is left half-typed, as
 * `=SUM(Figures[`, would spoil every formula read after it.
 */
class FreshLexer extends LexerTreeBuilder {
  override treeBuilder(...given: Arguments<"treeBuilder">) {
    return new LexerTreeBuilder().treeBuilder(...given);
  }

  override sequenceNodesBuilder(formula: string) {
    const parts = new LexerTreeBuilder().sequenceNodesBuilder(formula);
    return parts && withOpenBracketWhole(parts);
  }

  override getFunctionAndParameter(formula: string, index: number) {
    return new LexerTreeBuilder().getFunctionAndParameter(formula, index);
  }

  override checkIfAddBracket(formula: string) {
    return new LexerTreeBuilder().checkIfAddBracket(formula);
  }

  override nodeMakerTest(formula: string) {
    return new LexerTreeBuilder().nodeMakerTest(formula);
  }

  override getNewFormulaWithPrefix(...given: Arguments<"getNewFormulaWithPrefix">) {
    return new LexerTreeBuilder().getNewFormulaWithPrefix(...given);
  }

  override getFormulaExprTree(...given: Arguments<"getFormulaExprTree">) {
    return new LexerTreeBuilder().getFormulaExprTree(...given);
  }
}

type Parts = NonNullable<ReturnType<Parser["sequenceNodesBuilder"]>>;

/**
 * Keeps a table’s name and its bracket together while the bracket is open: `Figures[`, `Figures[Bust (m`. The grid’s own
 * parts break off at the bracket and at every operator in a heading, so that columns could not be completed there.
 */
function withOpenBracketWhole(parts: Parts): Parts {
  const text = (part: Parts[number]): string => (typeof part === "string" ? part : part.token);
  for (const [i, part] of parts.entries()) {
    if (typeof part === "string" || part.nodeType !== sequenceNodeType.FUNCTION) continue;
    const token = parts.slice(i).map(text).join("");
    if (/^[^[\]()"]+\[[^[\]]*$/.test(token))
      return [...parts.slice(0, i), { ...part, token, endIndex: part.startIndex + token.length - 1 }];
  }
  return parts;
}

/**
 * Puts the parser that forgets in the place of the grid’s own. After the plugins were registered, before a workbook opens.
 *
 * @throws when the grid has handed out its own parser already
 */
export function useFreshLexer(injector: Injector): void {
  injector.replace([LexerTreeBuilder, { useClass: FreshLexer }]);
}
