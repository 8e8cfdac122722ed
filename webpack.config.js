import { resolve } from "node:path";
import { fileURLToPath } from "node:url";
import CopyPlugin from "copy-webpack-plugin";
import CustomFunctionsMetadataPlugin from "custom-functions-metadata-plugin";
import LicensePlugin from "webpack-license-plugin";

const here = fileURLToPath(new URL(".", import.meta.url));
const DEVELOPMENT_BASE = "https://localhost:3000";

/**
 * Builds the add-in into dist/. `npm run build -- --env base=https://…` writes a manifest for that address;
 * without it the manifest keeps localhost. `--env maps` adds source maps, which a release goes without.
 */
export default (env = {}) => {
  const base = String(env.base ?? DEVELOPMENT_BASE).replace(/\/+$/, "");
  if (!/^https:\/\/[^\s/]+/.test(base))
    throw new Error(`--env base: found "${base}"; Excel loads add-ins from https:// addresses only`);
  const families = ["metal", "chain", "cost", "price", "asking", "catalogue"].map(
    (family) => `./functions/${family}.ts`,
  );
  return {
    mode: "production",
    context: here,
    target: ["web", "es2022"],
    devtool: env.maps ? "source-map" : false,
    // Excel runs functions.js by itself or as part of taskpane.html, which loads it first: the pane takes the library from it.
    entry: { functions: { import: families }, taskpane: { import: "./taskpane/main.ts", dependOn: "functions" } },
    output: {
      path: resolve(here, "dist"),
      filename: "[name].js",
      chunkFilename: "[name].js",
      // Beside taskpane.html. The usual search for the running script would keep functions.js from loading without a page.
      publicPath: "",
      clean: true,
    },
    resolve: { extensions: [".ts", ".js"] },
    module: {
      rules: [
        {
          test: /\.ts$/,
          exclude: /node_modules/,
          use: {
            loader: "ts-loader",
            options: {
              transpileOnly: true,
              compilerOptions: { noEmit: false },
            },
          },
        },
      ],
    },
    optimization: { splitChunks: SHARED_BY_PARTS },
    performance: { hints: false },
    cache: {
      type: "filesystem",
      name: env.maps ? "with-maps" : "release",
      cacheDirectory: resolve(here, ".cache/webpack-addin"),
      buildDependencies: { config: [fileURLToPath(import.meta.url)] },
    },
    plugins: [
      new CustomFunctionsMetadataPlugin({
        output: "functions.json",
        input: families,
      }),
      new ErrorsAsInput("functions.json"),
      new LicensePlugin({
        excludedPackageTest: (name) => name === "curbwright",
        outputFilename: "third-party-notices.json",
        additionalFiles: { "third-party-notices.txt": noticesOf },
      }),
      new CopyPlugin({
        patterns: [
          { from: "taskpane/taskpane.html", to: "taskpane.html" },
          { from: "taskpane/**/*.css", to: "[name][ext]" },
          { from: "taskpane/icons/*.png", to: "icons/[name][ext]" },
          {
            from: "manifest.xml",
            to: "manifest.xml",
            transform: (text) => text.toString().replaceAll(DEVELOPMENT_BASE, base),
          },
        ],
      }),
    ],
    stats: "errors-warnings",
  };
};

/** The licence of every package that is in what we ship, as its makers ask for. */
function noticesOf(packages) {
  return packages
    .map(({ name, version, license, licenseText }) => {
      if (!licenseText) throw new Error(`${name} comes without the text of its licence, which has to go with it`);
      return `${name} ${version} (${license})\n\n${licenseText.trim()}\n`;
    })
    .join(`\n${"-".repeat(72)}\n\n`);
}

/**
 * What several parts of the pane need, loaded with the first of them that is opened, under names that stay the same.
 * A file for two alone is worth a request from 6 KB.
 */
const SHARED_BY_PARTS = {
  chunks: "async",
  cacheGroups: {
    default: false,
    defaultVendors: false,
    drawing: {
      test: /[\\/]node_modules[\\/](?:d3-[^\\/]+|internmap)[\\/]|[\\/]taskpane[\\/]plots[\\/]/,
      name: "drawing",
      minChunks: 2,
      enforce: true,
      priority: 3,
    },
    csv: { test: /[\\/]node_modules[\\/]papaparse[\\/]/, name: "csv", enforce: true, priority: 3 },
    parts: { test: /[\\/](?:src|taskpane)[\\/]/, name: "parts", minChunks: 3, enforce: true, priority: 2 },
    pairs: {
      test: /[\\/](?:src|taskpane)[\\/]/,
      name: (_, chunks) =>
        chunks
          .map(({ name }) => name)
          .sort()
          .join("-"),
      minChunks: 2,
      minSize: 6_000,
      priority: 1,
    },
  },
};

/**
 * Lets a function be called when a cell of its range holds an error, so that the fault stays in its own row.
 * The metadata generator has no tag for it. Source: allowErrorForDataTypeAny in the documentation of functions.json.
 */
class ErrorsAsInput {
  constructor(asset) {
    this.asset = asset;
  }

  apply(compiler) {
    const { Compilation, sources } = compiler.webpack;
    compiler.hooks.compilation.tap("ErrorsAsInput", (compilation) => {
      const stage = Compilation.PROCESS_ASSETS_STAGE_OPTIMIZE_INLINE;
      compilation.hooks.processAssets.tap({ name: "ErrorsAsInput", stage }, (assets) => {
        const metadata = JSON.parse(assets[this.asset].source().toString());
        const text = JSON.stringify({ allowErrorForDataTypeAny: true, ...metadata }, null, 2);
        compilation.updateAsset(this.asset, new sources.RawSource(text));
      });
    });
  }
}
