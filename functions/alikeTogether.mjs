import webpack from "webpack";

/** The folders in the order of their dependencies, so that nothing stands before what it needs at once. */
const folders = [
  "node_modules",
  ...["measures", "chart", "checking", "similarity", "grading", "fit", "publish"].map(
    (name) => `addin/${name}`,
  ),
  "functions",
];
/** What webpack writes above each of the modules that it puts into one file. */
const module = /^(?=;\/\/ \.\/)/m;
const place = /^;\/\/ \.\/(\S*)/;
const end = "\n/******/ })()";

/**
 * A webpack plugin that puts the modules of a file in the order of their folders, before it is minified. What packs a file looks
 * back over 32 kB only (RFC 1951): it finds more again where modules of one topic stand together. This saves functions.js about 1.4 kB.
 */
export class AlikeTogether {
  constructor(file) {
    this.file = file;
  }

  apply(compiler) {
    compiler.hooks.thisCompilation.tap("AlikeTogether", (compilation) => {
      compilation.hooks.processAssets.tap(
        { name: "AlikeTogether", stage: webpack.Compilation.PROCESS_ASSETS_STAGE_OPTIMIZE },
        (assets) => {
          const text = assets[this.file].source();
          compilation.updateAsset(this.file, new webpack.sources.RawSource(inFolderOrder(text)));
        },
      );
    });
  }
}

/**
 * @param {string} text of a file
 * @returns {string}
 * @throws {Error} where it is not made as expected, or a module is of another folder
 */
export function inFolderOrder(text) {
  const last = text.lastIndexOf(end);
  const [head, ...modules] = text.slice(0, last).split(module);
  if (last < 0 || modules.length === 0) throw new Error("The modules of the file cannot be told apart.");
  const rank = (each) => {
    const [, path] = place.exec(each);
    const at = folders.findIndex((folder) => path.startsWith(`${folder}/`));
    if (at < 0) throw new Error(`The folder of ${path} has no place in the order of folders.`);
    return at;
  };
  // Modules of one folder stay as they were: what one of them needs stands before it.
  return head + modules.sort((a, b) => rank(a) - rank(b)).join("") + text.slice(last);
}
