import path from "node:path";
import { pathToFileURL } from "node:url";
import { tsImport } from "tsx/esm/api";

/**
 * A webpack loader that runs a module and leaves only what it exports, plain data, so that the page need not work it out. It is run
 * again when anything of the engine, the functions or the demo has changed.
 */
export default function runAtBuild() {
  const done = this.async();
  for (const folder of ["addin", "functions"]) this.addContextDependency(path.join(this.rootContext, folder));
  tsImport(pathToFileURL(this.resourcePath).href, import.meta.url).then(
    (exported) => {
      const named = Object.entries(exported).filter(([name]) => name !== "default");
      done(null, named.map(([name, value]) => `export const ${name} = ${written(value)};\n`).join(""));
    },
    (error) => done(error),
  );
}

/** Plain data as JavaScript. JSON would make `null` of what is not there. */
function written(value) {
  if (value === undefined) return "undefined";
  if (Array.isArray(value)) return `[${value.map(written).join()}]`;
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const there = Object.entries(value).filter(([, inner]) => inner !== undefined);
  return `{${there.map(([key, inner]) => `${JSON.stringify(key)}:${written(inner)}`).join()}}`;
}
