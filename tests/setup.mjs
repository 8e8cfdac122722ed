import { buildAddin, buildPage } from "./workbook/build.mjs";

/**
 * Builds what the tests drive, once for a run: dist/ and the workbook page. CURBWRIGHT_BUILT=1 says both are built already.
 */
export default async function setup() {
  if (process.env.CURBWRIGHT_BUILT === "1") {
    console.log("Not building: CURBWRIGHT_BUILT=1 says dist/ and .cache/workbook/ are up to date.");
    return;
  }
  for (const [what, build] of [
    ["the add-in", buildAddin],
    ["the workbook page", buildPage],
  ]) {
    const { seconds, warnings } = await build();
    if (warnings) console.warn(warnings);
    console.log(`Built ${what} in ${seconds.toFixed(1)} s`);
  }
}
