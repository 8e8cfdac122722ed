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
      new ErrorsAsInput("functions.json"),
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
