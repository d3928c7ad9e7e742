import ts from "typescript";

/** What of a function’s description only the reference, the help pages and functions.json need. */
const helpOfFunctions = ["summary", "details", "examples", "failures", "source"];
/** What of a measure’s entry in the dictionary is only ever shown. */
const helpOfMeasures = ["definition", "onFigures"];

/**
 * A webpack loader for functions.js: descriptions without their help, which Excel reads from functions.json. In calls of
 * `defineFunction` the help of the function goes, and the text that is the first argument of each of its parameters; in other
 * lists the definitions of measures.
 *
 * @param {string} source of a module
 * @returns {string}
 */
export default function leaveOutHelp(source) {
  const file = ts.createSourceFile("module.ts", source, ts.ScriptTarget.Latest, true);
  /** @type {{ from: number, to: number }[]} */
  const texts = [];
  const cut = (node) => texts.push({ from: node.getStart(), to: node.getEnd() });
  const visit = (node) => {
    if (ts.isPropertyAssignment(node)) {
      const name = node.name.getText();
      if (helpOfMeasures.includes(name)) cut(node.initializer);
      if (isOfDescriptor(node) && helpOfFunctions.includes(name)) cut(node.initializer);
      if (isOfDescriptor(node) && name === "parameters") helpTexts(node.initializer).forEach(cut);
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return texts
    .sort((a, b) => b.from - a.from)
    .reduce((text, { from, to }) => text.slice(0, from) + '""' + text.slice(to), source);
}

function isOfDescriptor({ parent: { parent } }) {
  return ts.isCallExpression(parent) && parent.expression.getText() === "defineFunction";
}

/** The first argument of each parameter, where that is a text. */
function helpTexts(parameters) {
  return parameters.properties
    .map(({ initializer }) => initializer)
    .filter((value) => value && ts.isCallExpression(value))
    .map((call) => call.arguments[0])
    .filter((given) => given && isText(given));
}

function isText(node) {
  if (ts.isBinaryExpression(node)) return isText(node.left) || isText(node.right);
  return ts.isStringLiteralLike(node) || ts.isTemplateExpression(node);
}
