import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";

/** A member of Office’s interface as our code uses it in one place. */
export interface UsedMember {
  /** Such as `Table.resize`. */
  readonly name: string;
  /** The requirement set that the typings state for it, such as `ExcelApi` and 13 for 1.13; none where they state none. */
  readonly set: { readonly name: string; readonly minor: number } | undefined;
  /** The highest minor version of ExcelApi that was asked for at run time on every way there; 0 where none was. */
  readonly asked: number;
  readonly where: string;
}

/**
 * Every member of the interface that TypeScript files use: properties, methods, names in `load(…)`, and names in object
 * literals that Office takes.
 *
 * @param folders whose files to read, from the root of the project
 */
export function usedMembers(folders: readonly string[]): readonly UsedMember[] {
  const files = folders
    .flatMap(sourcesIn)
    .filter((file) => /\b(Excel|Office|OfficeRuntime)\b/.test(readFileSync(file, "utf8")));
  const program = ts.createProgram(files, {
    target: ts.ScriptTarget.ES2022,
    module: ts.ModuleKind.ESNext,
    moduleResolution: ts.ModuleResolutionKind.Bundler,
    allowImportingTsExtensions: true,
    noEmit: true,
    strict: true,
    jsx: ts.JsxEmit.ReactJSX,
    types: ["office-js", "custom-functions-runtime"],
  });
  const checker = program.getTypeChecker();
  const sources = program
    .getSourceFiles()
    .filter(({ fileName }) => files.some((file) => fileName.endsWith(file)));
  const guards = new Guards(checker, sources);
  return sources.flatMap((source) => {
    const found: UsedMember[] = [];
    const note = (symbol: ts.Symbol | undefined, node: ts.Node) => {
      // Of a union, the one that came first: an object of the other kind is had only where that was asked for.
      const [declaration] = (symbol?.declarations ?? [])
        .filter(isOffice)
        .sort((a, b) => (setOf(a)?.minor ?? 0) - (setOf(b)?.minor ?? 0));
      if (!declaration) return;
      const { line } = source.getLineAndCharacterOfPosition(node.getStart());
      found.push({
        name: nameOf(declaration),
        set: setOf(declaration),
        asked: guards.asked(node),
        where: `${source.fileName.replace(/^.*?(addin|functions|taskpane)\//, "$1/")}:${String(line + 1)}`,
      });
    };
    const visit = (node: ts.Node): void => {
      if (ts.isPropertyAccessExpression(node)) note(checker.getSymbolAtLocation(node.name), node);
      if (ts.isCallExpression(node)) for (const symbol of loadedBy(node, checker)) note(symbol, node);
      if (ts.isObjectLiteralExpression(node)) {
        const type = checker.getContextualType(node);
        for (const property of node.properties) {
          if (property.name && ts.isIdentifier(property.name))
            note(type?.getProperty(property.name.text), property);
        }
      }
      if (ts.isBindingElement(node) && ts.isObjectBindingPattern(node.parent)) {
        const name = node.propertyName ?? node.name;
        if (ts.isIdentifier(name)) note(checker.getTypeAtLocation(node.parent).getProperty(name.text), node);
      }
      ts.forEachChild(node, visit);
    };
    visit(source);
    return found;
  });
}

function sourcesIn(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((file) => /\.tsx?$/.test(file))
    .map((file) => join(folder, file));
}

function isOffice(declaration: ts.Declaration): boolean {
  return declaration.getSourceFile().fileName.includes("@types/office-js");
}

function nameOf(declaration: ts.Declaration): string {
  const named = (node: ts.Node): string =>
    (ts.isClassDeclaration(node) || ts.isInterfaceDeclaration(node) || ts.isModuleDeclaration(node)) &&
    node.name
      ? node.name.text
      : "";
  const own = ts.getNameOfDeclaration(declaration)?.getText() ?? "";
  let holder: ts.Node = declaration.parent;
  while (named(holder) === "" && !ts.isSourceFile(holder)) holder = holder.parent;
  return `${named(holder)}.${own}`;
}

/** What “[Api set: ExcelApi 1.13]” says at a member, or at the class that it belongs to. */
function setOf(declaration: ts.Node): UsedMember["set"] {
  if (ts.isModuleDeclaration(declaration) || ts.isSourceFile(declaration)) return undefined;
  const text = ts
    .getJSDocCommentsAndTags(declaration)
    .map((comment) => comment.getText())
    .join("\n");
  const [, name, minor] = /\[\s*Api set:\s*(\w+)\s+1\.(\d+)/.exec(text) ?? [];
  return name !== undefined && minor !== undefined
    ? { name, minor: Number(minor) }
    : setOf(declaration.parent);
}

/** The properties that a call of `load` names, those of a collection’s items included. */
function loadedBy(call: ts.CallExpression, checker: ts.TypeChecker): readonly (ts.Symbol | undefined)[] {
  const { expression, arguments: given } = call;
  if (!ts.isPropertyAccessExpression(expression) || expression.name.text !== "load") return [];
  const type = checker.getTypeAtLocation(expression.expression);
  return given.flatMap((argument) => {
    const texts = ts.isArrayLiteralExpression(argument) ? [...argument.elements] : [argument];
    return texts.filter(ts.isStringLiteral).map(({ text }) => {
      const [first = "", second] = text.split("/");
      const property = type.getProperty(first);
      if (second === undefined || !property) return property;
      const items = checker.getTypeOfSymbol(property);
      return checker.getIndexInfoOfType(items, ts.IndexKind.Number)?.type.getProperty(second);
    });
  });
}

/** Finds what was asked for with `supports("1.13")` before a place is reached. */
class Guards {
  private readonly places = new Map<string, ts.Identifier[]>();
  private readonly known = new Map<ts.FunctionDeclaration, number>();

  constructor(
    private readonly checker: ts.TypeChecker,
    sources: readonly ts.SourceFile[],
  ) {
    const visit = (node: ts.Node): void => {
      if (ts.isIdentifier(node)) {
        const same = this.places.get(node.text);
        if (same) same.push(node);
        else this.places.set(node.text, [node]);
      }
      ts.forEachChild(node, visit);
    };
    sources.forEach(visit);
  }

  asked(node: ts.Node): number {
    let most = 0;
    for (
      let inner = node, outer = node.parent;
      !ts.isSourceFile(inner);
      inner = outer, outer = outer.parent
    ) {
      most = Math.max(most, askedBetween(inner, outer));
      if (ts.isFunctionDeclaration(inner)) return Math.max(most, this.askedByCallers(inner));
    }
    return most;
  }

  /** The least that was asked for wherever a function is named. */
  private askedByCallers(declaration: ts.FunctionDeclaration): number {
    const known = this.known.get(declaration);
    if (known !== undefined) return known;
    // A function that calls itself asks for what its other callers do.
    this.known.set(declaration, Infinity);
    const symbol = declaration.name && this.checker.getSymbolAtLocation(declaration.name);
    const uses = (this.places.get(declaration.name?.text ?? "") ?? [])
      .filter((node) => node !== declaration.name && !ts.isImportSpecifier(node.parent))
      .filter((node) => this.meant(node) === symbol)
      .map((node) => this.asked(node));
    const least = uses.length === 0 ? 0 : Math.min(...uses);
    this.known.set(declaration, least);
    return least;
  }

  private meant(node: ts.Node): ts.Symbol | undefined {
    const symbol = this.checker.getSymbolAtLocation(node);
    return symbol && symbol.flags & ts.SymbolFlags.Alias ? this.checker.getAliasedSymbol(symbol) : symbol;
  }
}

function askedBetween(inner: ts.Node, outer: ts.Node): number {
  if (ts.isConditionalExpression(outer) && outer.whenTrue === inner) return askedIn(outer.condition);
  if (ts.isIfStatement(outer) && outer.thenStatement === inner) return askedIn(outer.expression);
  if (!ts.isBlock(outer)) return 0;
  // `if (!supports("1.13")) return …;` before it.
  return outer.statements
    .filter((statement) => statement.end <= inner.pos)
    .reduce((most, statement) => Math.max(most, leavesUnless(statement)), 0);
}

function leavesUnless(statement: ts.Statement): number {
  if (!ts.isIfStatement(statement)) return 0;
  const { thenStatement: then } = statement;
  const last = ts.isBlock(then) ? then.statements.at(-1) : then;
  if (!last || !(ts.isReturnStatement(last) || ts.isThrowStatement(last))) return 0;
  return /!supports\("1\.(\d+)"\)/.test(statement.expression.getText()) ? versionIn(statement.expression) : 0;
}

function askedIn(condition: ts.Expression): number {
  return condition.getText().includes("!supports(") ? 0 : versionIn(condition);
}

function versionIn(condition: ts.Expression): number {
  return Number(/supports\("1\.(\d+)"\)/.exec(condition.getText())?.[1] ?? 0);
}
