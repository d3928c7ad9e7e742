import { Buffer } from "node:buffer";
import path from "node:path";
import { fileURLToPath } from "node:url";
import CopyPlugin from "copy-webpack-plugin";
import { EsbuildPlugin } from "esbuild-loader";
import HtmlPlugin from "html-webpack-plugin";
import TerserPlugin from "terser-webpack-plugin";
import { tsImport } from "tsx/esm/api";
import webpack from "webpack";
import { pagePolicy, panePolicy } from "./manifest/policy.mjs";

const root = path.dirname(fileURLToPath(import.meta.url));

/** Where the built pages will be served for Excel; the manifest needs the full address. */
const baseUrl = process.env.MEASURE_BOOK_URL ?? "https://localhost:3000/";

/** Writes what is generated from the sources (function metadata, manifests, workbooks) into the output folder. */
class EmitFiles {
  constructor(files) {
    this.files = files;
  }

  apply(compiler) {
    compiler.hooks.thisCompilation.tap("EmitFiles", (compilation) => {
      compilation.hooks.processAssets.tap(
        { name: "EmitFiles", stage: webpack.Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL },
        () => {
          for (const [name, content] of Object.entries(this.files))
            compilation.emitAsset(name, new webpack.sources.RawSource(content));
        },
      );
    });
  }
}

const gridChunks = /grid/;

const common = (mode) => ({
  mode,
  context: root,
  devtool: mode === "production" ? false : "cheap-module-source-map",
  resolve: { extensions: [".ts", ".tsx", ".js", ".mjs"] },
  module: {
    rules: [
      { test: /\.tsx?$/, loader: "esbuild-loader", options: { target: "es2022" } },
      { test: /\.css$/, use: ["style-loader", "css-loader"] },
      { test: /\.m?js$/, resolve: { fullySpecified: false } },
    ],
  },
  optimization: {
    minimizer: [
      // Takes out what nothing uses, which esbuild leaves in; for the grid’s megabytes that would take minutes.
      new TerserPlugin({
        exclude: gridChunks,
        extractComments: false,
        terserOptions: { ecma: 2022, compress: { passes: 2 } },
      }),
      new EsbuildPlugin({ target: "es2022", include: gridChunks }),
    ],
  },
  output: { path: path.join(root, "dist"), filename: "[name].js", chunkFilename: "chunk-[name].js" },
  cache: { type: "filesystem", buildDependencies: { config: [fileURLToPath(import.meta.url)] } },
  performance: { hints: false },
  stats: "errors-warnings",
  infrastructureLogging: { level: "warn" },
});

/** Files that need nothing of the pane: the worksheet functions for Excel, and what a published page runs for buyers. */
async function functionsConfig(mode) {
  const { functionsJson } = await tsImport("./functions/metadata.ts", import.meta.url);
  const { addresses, helpPages, manifestJson, manifestXml, readingPages } = await tsImport(
    "./manifest/manifest.ts",
    import.meta.url,
  );
  const asText = (value) => JSON.stringify(value, undefined, 2) + "\n";
  return {
    ...common(mode),
    name: "functions",
    devtool: false,
    entry: { functions: "./functions/excel.ts", buyers: "./taskpane/publish/buyers/buyersPage.ts" },
    module: {
      rules: [
        ...common(mode).module.rules,
        {
          include: ["functions", "addin/measures/dictionary"].map((folder) => path.join(root, folder)),
          enforce: "pre",
          loader: "./functions/leaveOutHelp.mjs",
        },
      ],
    },
    plugins: [
      new EmitFiles({
        "functions.json": asText(functionsJson(addresses(baseUrl).help)),
        "manifest.xml": manifestXml(baseUrl),
        "manifest.json": asText(manifestJson(baseUrl)),
        ...helpPages(),
        ...(mode === "production" && (await workbooks())),
        ...readingPages(addresses(baseUrl).home),
      }),
      new CopyPlugin({
        patterns: [
          { from: "manifest/icons/*.png", to: "icons/[name][ext]" },
          { from: "manifest/pages/pages.css", to: "pages.css" },
          // What a PDF is set in: fetched when one is made.
          ...["DejaVuSansCondensed", "DejaVuSansCondensed-Bold"].map((face) => ({
            from: `node_modules/dejavu-fonts-ttf/ttf/${face}.ttf`,
            to: `fonts/${face}.ttf`,
          })),
          { from: "node_modules/dejavu-fonts-ttf/LICENSE", to: "fonts/LICENSE.txt", toType: "file" },
        ],
      }),
    ],
  };
}

/** The workbooks that are handed out, by their place in the output folder. */
async function workbooks() {
  const { writtenWorkbooks } = await tsImport("./addin/standalone/workbooks/workbooks.ts", import.meta.url);
  const files = await writtenWorkbooks();
  return Object.fromEntries([...files].map(([name, bytes]) => [`workbooks/${name}`, Buffer.from(bytes)]));
}

/** The pane inside Excel, and the page without Excel. */
function pagesConfig(mode, port) {
  const office =
    mode === "production"
      ? "https://appsforoffice.microsoft.com/lib/1/hosted/office.js"
      : "office-js/dist/office.js";
  return {
    ...common(mode),
    name: "pages",
    entry: {
      taskpane: "./taskpane/taskpane.tsx",
      save: "./taskpane/saving/savePage.ts",
      standalone: "./addin/standalone/page.tsx",
    },
    plugins: [
      new HtmlPlugin({
        template: "./taskpane/taskpane.html",
        filename: "taskpane.html",
        chunks: ["taskpane"],
        scriptLoading: "defer",
        templateParameters: { office, policy: panePolicy },
      }),
      new HtmlPlugin({
        template: "./taskpane/saving/save.html",
        filename: "save.html",
        chunks: ["save"],
        scriptLoading: "defer",
      }),
      new HtmlPlugin({
        template: "./addin/standalone/index.html",
        filename: "index.html",
        chunks: ["standalone"],
        scriptLoading: "defer",
        templateParameters: { policy: pagePolicy },
      }),
      // The solver asks for these under Node.js only.
      new webpack.IgnorePlugin({ resourceRegExp: /^node:/ }),
    ],
    devServer: {
      host: "localhost",
      port,
      hot: false,
      liveReload: true,
      client: { overlay: false, logging: "error" },
      static: [
        {
          directory: path.join(root, "node_modules/@microsoft/office-js"),
          publicPath: "/office-js",
          watch: false,
        },
      ],
    },
  };
}

export default async function config(env, argv) {
  const mode = argv.mode ?? "development";
  return [await functionsConfig(mode), pagesConfig(mode, argv.port)];
}
