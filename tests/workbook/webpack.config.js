import { createRequire } from "node:module";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import CopyPlugin from "copy-webpack-plugin";
import webpack from "webpack";
import { isEdited } from "./gridedits.mjs";

const here = fileURLToPath(new URL(".", import.meta.url));
const root = resolve(here, "../..");
const univer = dirname(createRequire(import.meta.url).resolve("@univerjs/preset-sheets-core/lib/index.css"));

/**
 * Builds the workbook page and the bridge into .cache/workbook/. Apart from the add-in, and never shipped.
 * No minifying: the page is loaded from the same machine, and a quick second start matters more than its size.
 */
export default {
  name: "workbook",
  mode: "none",
  context: here,
  target: ["web", "es2022"],
  devtool: false,
  entry: { page: "./page.ts", bridge: "./bridge.ts" },
  output: { path: join(root, ".cache/workbook"), filename: "[name].js", chunkFilename: "[name].chunk.js", clean: true },
  resolve: { extensions: [".ts", ".mjs", ".js"] },
  module: {
    rules: [
      {
        test: /\.ts$/,
        exclude: /node_modules/,
        use: { loader: "ts-loader", options: { transpileOnly: true, compilerOptions: { noEmit: false } } },
      },
      { test: isEdited, use: join(here, "gridedits.mjs") },
      // Some of the grid's modules leave the extension off, which only strict ESM resolution minds.
      { test: /\.m?js$/, resolve: { fullySpecified: false } },
    ],
  },
  optimization: {
    nodeEnv: "production",
    moduleIds: "named",
    chunkIds: "named",
    sideEffects: true,
    providedExports: true,
  },
  performance: { hints: false },
  cache: {
    type: "filesystem",
    cacheDirectory: join(root, ".cache/webpack-workbook"),
    buildDependencies: { config: [fileURLToPath(import.meta.url)] },
  },
  plugins: [
    // Hyphenation patterns for some seventy languages, each a file of its own; English is asked for.
    new webpack.IgnorePlugin({
      resourceRegExp: /^\.\/(?!en-)[a-z]{2,3}(-[a-z0-9-]+)?-[\w-]{8}\.js$/,
      contextRegExp: /engine-render/,
    }),
    new CopyPlugin({
      patterns: [
        { from: "page.html", to: "index.html" },
        { from: "page.css", to: "page.css" },
        { from: join(univer, "index.css"), to: "grid.css" },
      ],
    }),
  ],
  stats: "errors-warnings",
};
