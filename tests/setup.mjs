import { buildAddin, buildPage } from "./workbook/build.mjs";

/**
 * Builds what the tests drive, once for a run: dist/ and the workbook page. CURBWRIGHT_BUILT=1 says both are built already.
 */
export default async function setup() {
  if (process.env.CURBWRIGHT_BUILT === "1") {
    console.log("Not building: CURBWRIGHT_BUILT=1 says dist/ and .cache/workbook/ are up to date.");
    return;
  }
  // Beside each other: most of the add-in's build is waiting for its minifier, which has a thread of its own.
  const builds = [tell("the add-in", buildAddin()), tell("the workbook page", buildPage())];
  for (const build of await Promise.allSettled(builds)) if (build.status === "rejected") throw build.reason;
}

async function tell(what, build) {
  const { seconds, warnings } = await build;
  if (warnings) console.warn(warnings);
  console.log(`Built ${what} in ${seconds.toFixed(1)} s`);
}
