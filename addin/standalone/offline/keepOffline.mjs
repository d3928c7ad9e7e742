import { createHash } from "node:crypto";
import webpack from "webpack";

/**
 * A webpack plugin: tells the script that keeps the page (`serviceWorker.ts`) which files to keep, all that the page
 * can come to load and what it names itself.
 */
export class KeepOffline {
  /** @param {{ page: string, script: string, others: readonly string[] }} names */
  constructor(names) {
    this.names = names;
  }

  apply(compiler) {
    compiler.hooks.thisCompilation.tap("KeepOffline", (compilation) => {
      // After the names were made from what the files hold.
      const stage = webpack.Compilation.PROCESS_ASSETS_STAGE_OPTIMIZE_TRANSFER;
      compilation.hooks.processAssets.tap({ name: "KeepOffline", stage }, () => {
        const files = ["./", ...filesOf(compilation, this.names.page), ...this.names.others];
        const hash = createHash("sha256").update(JSON.stringify(files));
        hash.update(compilation.getAsset("index.html").source.buffer());
        const version = { version: hash.digest("hex").slice(0, 20), files };
        compilation.updateAsset(
          this.names.script,
          (source) =>
            new webpack.sources.ConcatSource(
              `const measureBookVersion = ${JSON.stringify(version)};\n`,
              source,
            ),
        );
      });
    });
  }
}

/** All that an entry loads at once or can load later, its workers and what they ask for among it. */
function filesOf(compilation, entry) {
  const chunks = new Set();
  const add = (chunk) => {
    if (chunks.has(chunk)) return;
    chunks.add(chunk);
    for (const other of chunk.getAllReferencedChunks()) add(other);
    for (const worker of chunk.getAllReferencedAsyncEntrypoints()) worker.chunks.forEach(add);
  };
  compilation.entrypoints.get(entry).chunks.forEach(add);
  return [...new Set([...chunks].flatMap((chunk) => [...chunk.files, ...chunk.auxiliaryFiles]))].sort();
}
