import { execFile } from "node:child_process";
import { readFileSync } from "node:fs";
import { mkdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { promisify } from "node:util";
import { Mesh, TorusGeometry } from "three";
import { STLExporter } from "three/examples/jsm/exporters/STLExporter.js";
import { STLLoader } from "three/examples/jsm/loaders/STLLoader.js";
import webpack from "webpack";

// Asserts nothing. It times the first figures of a model (volume, size, closed or not) against three's STLLoader and a plain
// loop over its corners, in the same process, and weighs the memory of each in a process of its own.
const HERE = fileURLToPath(new URL(".", import.meta.url));
const CACHE = join(HERE, "../.cache/bench");
const FILE = join(CACHE, "torus.stl");
const ROUNDS = 15;
const MB = 1e6;

if (process.argv[2] === "--weigh") await weigh(process.argv[3]);
else await run();

async function run() {
  await mkdir(CACHE, { recursive: true });
  await build();
  const torus = new Mesh(new TorusGeometry(7, 3, 500, 1000));
  const bytes = new Uint8Array(new STLExporter().parse(torus, { binary: true }).buffer);
  await writeFile(FILE, bytes);
  const { measureStl, readStl, examineModel } = await library();
  const first = measureStl(bytes);
  const plain = plainly(bytes);
  const whole = examineModel(readStl(bytes).mesh);
  // Their loop sums about the origin and with nothing held back; a torus in the middle does not suffer from it.
  for (const volume of [plain.volume, whole.solids[0].volume]) {
    if (!(Math.abs(volume - first.volume) < 1e-9 * volume))
      throw new Error(`${volume} and ${first.volume}: nothing to compare`);
  }
  if (!first.closed || whole.solids[0].faults.length > 0) throw new Error("the torus should be closed");

  console.log(
    `\n1,000,000 triangles, ${(bytes.length / MB).toFixed(0)} MB, medians of ${ROUNDS} rounds in one process (Node ${process.versions.node})`,
  );
  const rounds = Array.from({ length: ROUNDS }, () => {
    const theirs = time(() => plainly(bytes));
    const ours = time(() => measureStl(bytes));
    return { theirs, ours, ratio: theirs / ours };
  });
  const of = (key) => median(rounds.map((round) => round[key]));
  line("three's STLLoader, volume and size by a plain loop", `${of("theirs").toFixed(0)} ms`);
  line("volume, size and closedness", `${of("ours").toFixed(0)} ms, ${of("ratio").toFixed(1)} times as fast`);
  const examined = median(Array.from({ length: 3 }, () => time(() => examineModel(readStl(bytes).mesh))));
  line("every edge, solid, hollow and overlap", `${(examined / 1000).toFixed(1)} s`);
  for (const [what, words] of [
    ["measure", "memory of volume, size and closedness"],
    ["examine", "memory of every edge, solid, hollow and overlap"],
    ["three", "memory of three's STLLoader"],
  ]) {
    const { stdout } = await promisify(execFile)(process.execPath, [fileURLToPath(import.meta.url), "--weigh", what]);
    line(words, `${(Number(stdout) / bytes.length).toFixed(1)} times the file, the file among it`);
  }
}

function plainly(bytes) {
  const geometry = new STLLoader().parse(bytes.buffer);
  const corners = geometry.getAttribute("position").array;
  let six = 0;
  for (let i = 0; i < corners.length; i += 9) {
    const [ax, ay, az] = [corners[i], corners[i + 1], corners[i + 2]];
    const [bx, by, bz] = [corners[i + 3], corners[i + 4], corners[i + 5]];
    const [cx, cy, cz] = [corners[i + 6], corners[i + 7], corners[i + 8]];
    six += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  }
  geometry.computeBoundingBox();
  return { volume: six / 6, box: geometry.boundingBox };
}

/** Prints by how many bytes the process has grown at its largest. */
async function weigh(what) {
  const { measureStl, readStl, examineModel } = await library();
  const before = process.memoryUsage().rss;
  // Once read, the file may go: nothing here holds it, as nothing does in the pane's worker.
  const bytes = () => new Uint8Array(readFileSync(FILE).buffer);
  const mesh = () => readStl(bytes()).mesh;
  if (what === "measure") measureStl(bytes());
  else if (what === "examine") examineModel(mesh());
  else plainly(bytes());
  process.stdout.write(String((await peak()) - before));
}

/** The most memory this process has had, in bytes. Linux tells maxRSS from before the process became its own, so not that. */
async function peak() {
  const status = await readFile("/proc/self/status", "utf8").catch(() => "");
  const kilobytes = /VmHWM:\s+(\d+) kB/.exec(status)?.[1] ?? process.resourceUsage().maxRSS;
  return Number(kilobytes) * 1024;
}

/** The library as the product's bundler makes it. */
function build() {
  const config = {
    mode: "production",
    target: "node20",
    context: join(HERE, ".."),
    entry: "./src/index.ts",
    experiments: { outputModule: true },
    output: { path: CACHE, filename: "library.mjs", library: { type: "module" } },
    resolve: { extensions: [".ts", ".js"] },
    module: {
      rules: [
        {
          test: /\.ts$/,
          use: { loader: "ts-loader", options: { transpileOnly: true, compilerOptions: { noEmit: false } } },
        },
      ],
    },
  };
  return new Promise((fulfil, reject) => {
    webpack(config, (error, stats) => {
      if (error) reject(error);
      else if (stats.hasErrors()) reject(new Error(stats.toString("errors-only")));
      else fulfil();
    });
  });
}

function library() {
  return import(pathToFileURL(join(CACHE, "library.mjs")).href);
}

function line(words, figure) {
  console.log(`${words.padEnd(54)} ${figure}`);
}

function time(work) {
  const started = performance.now();
  work();
  return performance.now() - started;
}

function median(numbers) {
  return numbers.toSorted((a, b) => a - b)[Math.floor(numbers.length / 2)];
}
