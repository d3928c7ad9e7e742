import ts from "typescript";

/** What of a function’s description only the reference, the help pages and functions.json need. */
const helpOfFunctions = ["summary", "details", "examples", "failures", "source"];
/** What of a measure’s entry in the dictionary is only ever shown. */
const helpOfMeasures = ["definition", "onFigures"];
/** Where the drawing of a piece begins, in words. */
const helpOfPieces = ["origin"];
/** Kinds of parameters whose second argument is what an omitted argument stands for. */
const withStandsFor = ["optionalRange", "names", "optionalReading", "optionalUnit", "optionalFigureName"];
/** Which argument of a call is a note that no function gives: the reason of an ease rule, the note of a garment class. */
const notes = { need: 3, may: 3, of: 4 };

/**
 * A webpack loader for functions.js: descriptions without their help, which Excel reads from functions.json. In calls of
 * `defineFunction` the help of the function goes, and that of each of its parameters; likewise in functions that make a parameter.
 * Of the words to choose from their meanings go, in other lists the definitions of measures and the notes.
 *
 * @param {string} source of a module
 * @returns {string}
 */
export default function leaveOutHelp(source) {
  const file = ts.createSourceFile("module.ts", source, ts.ScriptTarget.Latest, true);
  /** @type {{ from: number, to: number, instead: string }[]} */
  const texts = [];
  const cut = (node) => texts.push({ from: node.getStart(), to: node.getEnd(), instead: '""' });
  // A property goes with the comma behind it.
  const cutWhole = (node) => {
    const to = node.getEnd() + (/^\s*,/.exec(source.slice(node.getEnd()))?.[0].length ?? 0);
    texts.push({ from: node.getStart(), to, instead: "" });
  };
  const visit = (node) => {
    if (ts.isPropertyAssignment(node)) {
      const name = node.name.getText();
      if (helpOfMeasures.includes(name)) cutWhole(node);
      if (helpOfPieces.includes(name) && isText(node.initializer)) cut(node.initializer);
      if (isOfDescriptor(node) && helpOfFunctions.includes(name)) {
        cutWhole(node);
        return;
      }
      if (isOfDescriptor(node) && name === "parameters") helpTexts(node.initializer).forEach(cut);
    }
    if (makesParameter(node)) helpOfMade(node).forEach(cut);
    if (isChoices(node))
      node.arguments[1].properties.filter(hasText).forEach((each) => cut(each.initializer));
    const note = ts.isCallExpression(node) && node.arguments[notes[node.expression.getText()]];
    if (note && isText(note)) cut(note);
    ts.forEachChild(node, visit);
  };
  visit(file);
  return texts
    .sort((a, b) => b.from - a.from)
    .reduce((text, { from, to, instead }) => text.slice(0, from) + instead + text.slice(to), source);
}

function isOfDescriptor({ parent: { parent } }) {
  return ts.isCallExpression(parent) && parent.expression.getText() === "defineFunction";
}

/** Of each parameter that is a call the texts that are help. */
function helpTexts(parameters) {
  return parameters.properties
    .map(({ initializer }) => initializer)
    .filter((value) => value && ts.isCallExpression(value))
    .flatMap(helpOf);
}

function helpOf(call) {
  const [help, standsFor] = call.arguments;
  const given = withStandsFor.includes(call.expression.getText()) ? [help, standsFor] : [help];
  return given.filter((each) => each && isText(each));
}

/** `function patterns(): Parameter<…>` */
function makesParameter(node) {
  return ts.isFunctionDeclaration(node) && (node.type?.getText().startsWith("Parameter<") ?? false);
}

/** The help in what such a function returns, and where nothing else is given. */
function helpOfMade({ parameters, body }) {
  const defaults = parameters.filter((each) => each.name.getText() === "help" && each.initializer);
  const returned = body.statements.filter(ts.isReturnStatement).map(({ expression }) => expression);
  return [
    ...defaults.map(({ initializer }) => initializer).filter(isText),
    ...returned.filter((value) => value && ts.isCallExpression(value)).flatMap(helpOf),
  ];
}

/** `choices("NAME", { word: "What it means" })` */
function isChoices(node) {
  return (
    ts.isCallExpression(node) &&
    node.expression.getText() === "choices" &&
    node.arguments.length === 2 &&
    ts.isObjectLiteralExpression(node.arguments[1])
  );
}

function hasText(property) {
  return ts.isPropertyAssignment(property) && isText(property.initializer);
}

function isText(node) {
  if (ts.isBinaryExpression(node)) return isText(node.left) || isText(node.right);
  return ts.isStringLiteralLike(node) || ts.isTemplateExpression(node);
}
