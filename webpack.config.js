import { Buffer } from "node:buffer";
import path from "node:path";
import { fileURLToPath } from "node:url";
import CopyPlugin from "copy-webpack-plugin";
import HtmlPlugin from "html-webpack-plugin";
import TerserPlugin from "terser-webpack-plugin";
import { tsImport } from "tsx/esm/api";
import webpack from "webpack";
import { KeepOffline } from "./addin/standalone/offline/keepOffline.mjs";
import { AlikeTogether } from "./functions/alikeTogether.mjs";
import { pagePolicy, panePolicy } from "./manifest/policy.mjs";

const root = path.dirname(fileURLToPath(import.meta.url));

/** Where the built pages will be served for Excel; the manifest needs the full address. */
const baseUrl = process.env.MEASURE_BOOK_URL ?? "https://localhost:3000/";

/** What a PDF is set in. */
const pdfFaces = ["DejaVuSansCondensed", "DejaVuSansCondensed-Bold"];

/** Icons of the page as an app, see `addin/standalone/app.webmanifest`. */
const appIcons = ["icons/icon-192.png", "icons/icon-512.png"];

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

const minimizer = (passes, more) =>
  new TerserPlugin({ extractComments: false, terserOptions: { ecma: 2022, compress: { passes, ...more } } });

const common = (mode) => ({
  mode,
  context: root,
  devtool: mode === "production" ? false : "cheap-module-source-map",
  resolve: {
    extensions: [".ts", ".tsx", ".js", ".mjs"],
    // As files of its own, of which those that are not used can be left out; its bundle keeps classifiers and tables.
    alias: { "simple-statistics$": path.join(root, "node_modules/simple-statistics/index.js") },
  },
  module: {
    rules: [
      { test: /node_modules\/simple-statistics\//, sideEffects: false },
      { test: /\.tsx?$/, loader: "esbuild-loader", options: { target: "es2022" } },
      { test: /\.css$/, use: ["style-loader", "css-loader"] },
      { test: /\.m?js$/, resolve: { fullySpecified: false } },
    ],
  },
  optimization: { minimizer: [minimizer(2)] },
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
    // None of our functions is called with `new`, and reading a property of ours does nothing else.
    optimization: { minimizer: [minimizer(3, { unsafe_arrows: true, pure_getters: true })] },
    module: {
      rules: [
        ...common(mode).module.rules,
        {
          include: [
            ...["functions", "addin/measures/dictionary"],
            ...["defaultEaseRules", "garmentClass", "gradeBlocks"].map((name) => `addin/chart/${name}.ts`),
          ].map((place) => path.join(root, place)),
          enforce: "pre",
          loader: "./functions/leaveOutHelp.mjs",
        },
      ],
    },
    plugins: [
      ...(mode === "production" ? [new AlikeTogether("functions.js")] : []),
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
          // Fetched when a PDF is made.
          ...pdfFaces.map((face) => ({
            from: `node_modules/dejavu-fonts-ttf/ttf/${face}.ttf`,
            to: `fonts/${face}.ttf`,
          })),
          { from: "node_modules/dejavu-fonts-ttf/LICENSE", to: "fonts/LICENSE.txt", toType: "file" },
          { from: "addin/standalone/app.webmanifest", to: "app.webmanifest" },
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

/** What the page needs to be useful, fetched at once and not one after the other. */
const atOnce = ["pane", "gate", "section-home", "demo", "grid"];

/** Names of files that a page loads soon, in the order in which it needs them. */
function soonNeeded({ namedChunkGroups, entrypoints }) {
  const loaded = entrypoints.get("standalone").getFiles();
  const files = atOnce.flatMap((name) => namedChunkGroups.get(name)?.getFiles() ?? []);
  return [...new Set(files)].filter((file) => file.endsWith(".js") && !loaded.includes(file));
}

/** What the grid brings along and a sheet has no use for, see `addin/standalone/grid/leftOut`. */
const leftOut = path.join(root, "addin/standalone/grid/leftOut");
const insteadOf = {
  "franc-min$": path.join(leftOut, "documents.ts"),
  "opentype.js$": path.join(leftOut, "documents.ts"),
  "cjk-regex$": path.join(leftOut, "cjkRegex.ts"),
};
const withoutHyphens = new webpack.NormalModuleReplacementPlugin(/^\.\/[a-z\d-]+-[\w-]{8}\.js$/, (asked) => {
  if (/engine-render.lib.es$/.test(asked.context)) asked.request = path.join(leftOut, "documents.ts");
});

/** The pane inside Excel, and the page without Excel. */
function pagesConfig(mode, port) {
  const isProduction = mode === "production";
  const office = isProduction
    ? "https://appsforoffice.microsoft.com/lib/1/hosted/office.js"
    : "office-js/dist/office.js";
  return {
    ...common(mode),
    name: "pages",
    resolve: { ...common(mode).resolve, alias: { ...common(mode).resolve.alias, ...insteadOf } },
    entry: {
      taskpane: "./taskpane/taskpane.tsx",
      save: "./taskpane/saving/savePage.ts",
      standalone: "./addin/standalone/page.tsx",
      // Its address must stay.
      ...(isProduction && {
        offline: { import: "./addin/standalone/offline/serviceWorker.ts", filename: "offline.js" },
      }),
    },
    // A name that is made from what the file holds: what a browser has kept is never an older file of that name.
    ...(isProduction && {
      output: {
        ...common(mode).output,
        filename: "[name].[contenthash].js",
        chunkFilename: "chunk-[name].[contenthash].js",
        clean: { keep: (file) => !/[0-9a-f]{20}\.(js|wasm)$/.test(file) },
      },
    }),
    module: {
      rules: [
        ...common(mode).module.rules,
        {
          include: ["page/calculatedDemo.ts", "grid/leftOut/cjkLetters.ts"].map((file) =>
            path.join(root, "addin/standalone", file),
          ),
          enforce: "pre",
          loader: "./addin/standalone/runAtBuild.mjs",
        },
      ],
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
        templateParameters: (compilation) => ({ policy: pagePolicy, soonNeeded: soonNeeded(compilation) }),
      }),
      ...(isProduction
        ? [
            new KeepOffline({
              page: "standalone",
              script: "offline.js",
              others: ["app.webmanifest", ...appIcons, ...pdfFaces.map((face) => `fonts/${face}.ttf`)],
            }),
          ]
        : []),
      withoutHyphens,
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
