import { resolve } from "node:path";
import { fileURLToPath } from "node:url";
import CopyPlugin from "copy-webpack-plugin";
import CustomFunctionsMetadataPlugin from "custom-functions-metadata-plugin";

const here = fileURLToPath(new URL(".", import.meta.url));
const DEVELOPMENT_BASE = "https://localhost:3000";

/**
 * Builds the add-in into dist/. `npm run build -- --env base=https://…` writes a manifest for that address;
 * without it the manifest keeps localhost.
 */
export default (env = {}) => {
  const base = String(env.base ?? DEVELOPMENT_BASE).replace(/\/+$/, "");
  if (!/^https:\/\/[^\s/]+/.test(base))
    throw new Error(`--env base: found "${base}"; Excel loads add-ins from https:// addresses only`);
  const families = ["metal", "chain", "cost", "making", "price", "selling", "asking", "catalogue", "cash"].map(
    (family) => `./functions/${family}.ts`,
  );
  return {
    mode: "production",
    context: here,
    target: ["web", "es2022"],
    devtool: "source-map",
    entry: { functions: families, taskpane: "./taskpane/main.ts" },
    output: {
      path: resolve(here, "dist"),
      filename: "[name].js",
      chunkFilename: "[name].js",
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
    // What a part of the pane needs comes in one file: its library is nobody else's.
    optimization: { splitChunks: false },
    performance: { hints: false },
    cache: {
      type: "filesystem",
      cacheDirectory: resolve(here, ".cache/webpack-addin"),
      buildDependencies: { config: [fileURLToPath(import.meta.url)] },
    },
    plugins: [
      new CustomFunctionsMetadataPlugin({
        output: "functions.json",
        input: families,
      }),
      new DataTypeFlag("functions.json"),
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
