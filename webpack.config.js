/**
 * The build: the functions as one classic script with their metadata, the pane, the workbench, the manifest.
 */
const path = require("node:path");
const { readdirSync } = require("node:fs");
const CopyPlugin = require("copy-webpack-plugin");
const CustomFunctionsMetadataPlugin = require("custom-functions-metadata-plugin");
const HtmlPlugin = require("html-webpack-plugin");
const CssPlugin = require("mini-css-extract-plugin");
const TerserPlugin = require("terser-webpack-plugin");
require("tsx/cjs");
const { manifestFor } = require("./src/build/manifest.ts");
const { MainOnly } = require("./src/build/main-only.ts");
const { Licences } = require("./src/build/licences.ts");
const { LOCAL_ORIGIN, originOf } = require("./src/build/origin.ts");
const { HelpPlugin } = require("./src/help/help-plugin.ts");

const FUNCTIONS = path.resolve(__dirname, "src/functions");
const functionFiles = readdirSync(FUNCTIONS).map((file) => path.join(FUNCTIONS, file));

/** npm run build -- --env origin=https://example.org/mousse */
const configurationFor = (origin, mode) => ({
  mode,
  entry: {
    functions: "./src/functions/index.ts",
    taskpane: "./src/taskpane/taskpane.ts",
    workbench: "./src/workbench/workbench.ts",
  },
  output: {
    path: path.resolve(__dirname, "dist"),
    filename: "[name].js",
    chunkFilename: "chunks/[name].js",
    clean: true,
  },
  cache: { type: "filesystem", cacheDirectory: path.resolve(__dirname, ".cache/webpack") },
  devtool: false,
  optimization: {
    minimizer: [
      new TerserPlugin({ test: /(functions|taskpane)\.js$/, extractComments: false }),
      // the spreadsheet is large: esbuild shortens it in seconds, so that npm start serves short files too
      new TerserPlugin({
        exclude: /(functions|taskpane)\.js$/,
        minify: TerserPlugin.esbuildMinify,
        terserOptions: { legalComments: "inline" },
      }),
    ],
  },
  resolve: { extensions: [".ts", ".js"] },
  module: {
    rules: [
      {
        test: /\.ts$/,
        exclude: /node_modules/,
        // types are checked by tsc on their own
        use: { loader: "ts-loader", options: { transpileOnly: true, compilerOptions: { noEmit: false } } },
      },
      { test: /\.css$/, use: [CssPlugin.loader, "css-loader"] },
    ],
  },
  plugins: [
    new CustomFunctionsMetadataPlugin({ output: "functions.json", input: functionFiles }),
    new MainOnly("functions.json"),
    new HelpPlugin({ functions: FUNCTIONS, origin }),
    new CssPlugin({ filename: "[name].css" }),
    new Licences(),
    new HtmlPlugin({
      filename: "taskpane.html",
      template: "./src/taskpane/taskpane.html",
      chunks: ["functions", "taskpane"],
      chunksSortMode: "manual",
    }),
    new HtmlPlugin({
      filename: "workbench.html",
      template: "./src/workbench/workbench.html",
      chunks: ["functions", "workbench", "taskpane"],
      chunksSortMode: "manual",
    }),
    new CopyPlugin({
      patterns: [
        { from: "manifest.xml", transform: (xml) => manifestFor(xml.toString(), origin) },
        { from: "*.png", context: "src/assets", to: "assets" },
        { from: "{index.html,guide.css,pictures/*.png}", context: "src/guide", to: "guide" },
      ],
    }),
  ],
  performance: { hints: false },
  stats: "errors-warnings",
  devServer: {
    devMiddleware: { index: "workbench.html" },
    static: false,
    client: { overlay: false, logging: "warn" },
    hot: false,
    liveReload: true,
  },
});

module.exports = ({ origin = LOCAL_ORIGIN } = {}, { mode = "production" } = {}) =>
  configurationFor(originOf(origin), mode);
