import { existsSync } from "node:fs";
import { join, relative } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import webpack from "webpack";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));

/** A build that ended with errors; its message is written for the person who builds. */
export class BuildError extends Error {
  name = "BuildError";
}

/**
 * Builds the add-in by webpack.config.js, with source maps, into dist/ or into `output`.
 * Errors: BuildError with webpack's own account.
 * @param {{ base?: string, support?: string, output?: string }} [options] base, support: the https addresses the manifest names
 * @returns {Promise<{ seconds: number, warnings: string }>}
 */
export function buildAddin({ base, support, output } = {}) {
  return build(
    "the add-in",
    join(ROOT, "webpack.config.js"),
    { maps: true, ...(base ? { base } : {}), ...(support ? { support } : {}) },
    output,
  );
}

/**
 * Builds the workbook page by tests/workbook/webpack.config.js into .cache/workbook/.
 * Errors: BuildError with webpack's own account.
 * @returns {Promise<{ seconds: number, warnings: string }>}
 */
export function buildPage() {
  return build("the workbook page", join(ROOT, "tests/workbook/webpack.config.js"), {});
}

async function build(what, configFile, env, output) {
  if (!existsSync(configFile))
    throw new BuildError(`Could not build ${what}: ${relative(ROOT, configFile)} is missing`);
  const started = performance.now();
  const { default: config } = await import(pathToFileURL(configFile).href);
  const options = await (typeof config === "function" ? config(env, {}) : config);
  if (output) {
    options.output = { ...options.output, path: output };
    // A build into another folder may read the usual build's cache, and must not change it.
    options.cache = { ...options.cache, readonly: true };
  }
  const stats = await run(what, options);
  const { stats: detail = "errors-warnings" } = options;
  if (stats.hasErrors()) throw new BuildError(`Could not build ${what}:\n${stats.toString(detail)}`);
  return {
    seconds: (performance.now() - started) / 1000,
    warnings: stats.hasWarnings() ? stats.toString(detail) : "",
  };
}

function run(what, options) {
  return new Promise((fulfil, reject) => {
    let compiler;
    try {
      compiler = webpack(options);
    } catch (error) {
      reject(new BuildError(`Could not build ${what}: ${error.message}`));
      return;
    }
    compiler.run((error, stats) => {
      // Closing writes the filesystem cache, which makes the next build quick.
      compiler.close((closing) => {
        const fault = error ?? closing;
        if (fault) reject(new BuildError(`Could not build ${what}: ${fault.message}`));
        else fulfil(stats);
      });
    });
  });
}
