import { resolve } from "node:path";
import { fileURLToPath } from "node:url";
import CopyPlugin from "copy-webpack-plugin";
import CustomFunctionsMetadataPlugin from "custom-functions-metadata-plugin";
import LicensePlugin from "webpack-license-plugin";

const here = fileURLToPath(new URL(".", import.meta.url));
const DEVELOPMENT_BASE = "https://localhost:3000";

/**
 * Builds the add-in into dist/. A release is `npm run build -- --env base=https://… --env support=https://…`: the addresses that the
 * manifest names. `--env maps` adds source maps and keeps localhost: for this computer, never for others.
 */
export default (env = {}) => {
  const base = addressOf(env, "base", DEVELOPMENT_BASE);
  const support = addressOf(env, "support", `${base}/taskpane.html`);
  if (!env.maps && new URL(base).hostname === "localhost")
    throw new Error(
      `--env base: found ${env.base ? `"${env.base}"` : "nothing"}; a release needs the https:// address that others load it from. For this computer alone: --env maps`,
    );
  const families = [
    "metal",
    "chain",
    "cost",
    "making",
    "price",
    "selling",
    "settling",
    "amounts",
    "asking",
    "catalogue",
    "cash",
  ].map((family) => `./functions/${family}.ts`);
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
      chunkFilename: "[name].js?[contenthash:8]",
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
      new DataTypeFlag("functions.json"),
      new FreshAssets("taskpane.html"),
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
            transform: (text) =>
              text
                .toString()
                .replace(/(<SupportUrl DefaultValue=")[^"]*/, `$1${support}`)
                .replaceAll(DEVELOPMENT_BASE, base),
          },
        ],
      }),
    ],
    stats: "errors-warnings",
  };
};

function addressOf(env, name, otherwise) {
  const address = String(env[name] ?? otherwise).replace(/\/+$/, "");
  if (!/^https:\/\/[^\s/]+/.test(address))
    throw new Error(`--env ${name}: found "${address}"; Excel takes https:// addresses only`);
  return address;
}

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
 * The one flag that functions.json bears: an error cell of a range then reaches the function, so that it is a fault in its own row
 * and the other rows have their answers. The documentation ties it to no requirement set, so it holds on Microsoft 365, the web,
 * Mac and the editions bought once.
 *
 * `allowCustomDataForDataTypeAny`, which the metadata tool adds unasked, is taken out:
 * - Both together crash the volume edition of Excel 2021 (office-js issue 4385).
 * - Alone it lets error cells in only where CustomFunctionsRuntime 1.4 is: Microsoft 365, the web, Mac. In the editions bought once an
 *   error cell would be the answer of its whole column.
 * - It hands formatted numbers and data types as objects. The functions want the plain numbers, which come without it.
 *
 * Sources: allowErrorForDataTypeAny and allowCustomDataForDataTypeAny in the documentation of functions.json (custom-functions-json);
 * the table of custom functions requirement sets.
 */
const KEPT_FLAG = "allowErrorForDataTypeAny";

/** Writes the kept flag into the metadata, and takes out the one that the tool adds. */
class DataTypeFlag {
  constructor(asset) {
    this.asset = asset;
  }

  apply(compiler) {
    const { Compilation, sources } = compiler.webpack;
    compiler.hooks.compilation.tap("DataTypeFlag", (compilation) => {
      const stage = Compilation.PROCESS_ASSETS_STAGE_OPTIMIZE_INLINE;
      compilation.hooks.processAssets.tap({ name: "DataTypeFlag", stage }, (assets) => {
        const { allowCustomDataForDataTypeAny: _, ...metadata } = JSON.parse(assets[this.asset].source().toString());
        const text = JSON.stringify({ [KEPT_FLAG]: true, ...metadata }, null, 2);
        compilation.updateAsset(this.asset, new sources.RawSource(text));
      });
    });
  }
}

/**
 * Puts a print of its content behind each script and style that a page names, so that a page never meets an older version of
 * them: Excel keeps scripts for up to a day, pages not at all.
 */
class FreshAssets {
  constructor(page) {
    this.page = page;
  }

  apply(compiler) {
    const { Compilation, sources, util } = compiler.webpack;
    compiler.hooks.compilation.tap("FreshAssets", (compilation) => {
      const stage = Compilation.PROCESS_ASSETS_STAGE_SUMMARIZE;
      compilation.hooks.processAssets.tap({ name: "FreshAssets", stage }, (assets) => {
        const printOf = (name) => util.createHash("xxhash64").update(assets[name].source()).digest("hex").slice(0, 8);
        const html = assets[this.page].source().toString();
        // The minimizer drops quotes where it may.
        const named = html.replace(
          /(?<=(?:src|href)=["']?)[\w.]+\.(?:js|css)(?=["'\s>])/g,
          (name) => `${name}?${printOf(name)}`,
        );
        compilation.updateAsset(this.page, new sources.RawSource(named));
      });
    });
  }
}
