// Throughput and latency of the main computations against a bare JSON echo, in one run on this machine.
// usage: node src/load/benchmark.mjs [SECONDS [STARTS]]   seconds a measurement, 5 if left out; starts of the virtual machine, one
// if left out: what its compiler makes of the same code differs by more than a small change does. Needs wrk, builds what it measures.
import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { ask, example, percentile, processorSeconds, resident, root, start, stop } from './lib.mjs';

const duration = Number(process.argv[2] ?? 5);
const starts = Number(process.argv[3] ?? 1);
const connections = 16;
// The echo is compiled into a copy of the service, so that it is in no jar that is shipped.
const copy = `${root}/target/load`;
const app = 'target/load/target/quarkus-app';
if (!process.env.TUNSIDE_BUILT || !existsSync(`${root}/${app}`)) {
  rmSync(`${copy}/src`, { recursive: true, force: true });
  cpSync(`${root}/pom.xml`, `${copy}/pom.xml`);
  cpSync(`${root}/src/main`, `${copy}/src/main`, { recursive: true });
  cpSync(`${root}/src/load/java`, `${copy}/src/main/java`, { recursive: true });
  execFileSync('mvn', ['-q', '-DskipTests', '-Dspotless.check.skip', 'package'], { cwd: copy, stdio: 'inherit' });
}
const scratch = `${copy}/bodies`;
mkdirSync(scratch, { recursive: true });
const examples = (process.env.TUNSIDE_OPERATIONS ?? 'evaluateCalibration predictMash computeAcidDose').split(' ').map((operation) => {
  const { path, body, answer } = example(operation);
  writeFileSync(`${scratch}/${operation}`, body);
  return { operation, path, body, answer, runs: {} };
});

function wrk(service, path, type, name) {
  const before = processorSeconds(service);
  const text = execFileSync('wrk', ['-t1', `-c${connections}`, `-d${duration}s`, '-s', 'src/load/post.lua', service.url + path],
    { cwd: root, encoding: 'utf8', env: { ...process.env, BODY: `${scratch}/${name}`, TYPE: type } });
  const figures = JSON.parse(text.trim().split('\n').at(-1));
  return { ...figures, cost: ((processorSeconds(service) - before) * 1e6) / (figures.rate * duration) };
}

const bytes = 'application/octet-stream';
async function measure(service, { operation, path, answer, runs }) {
  const kept = await ask(service, { path: `/echo/answers/${operation}`, body: answer, headers: { 'Content-Type': bytes } });
  if (kept.status !== 200) throw new Error(`the echo answers ${kept.status}: ${kept.body}`);
  const kinds = {
    echo: () => wrk(service, '/echo', bytes, operation),
    'echo of both': () => wrk(service, `/echo/${operation}`, bytes, operation),
    [operation]: () => wrk(service, path, 'application/json', operation),
  };
  // until it is compiled, for which the compiler of the virtual machine needs most of a core: until it gets no faster
  for (const run of Object.values(kinds)) {
    for (let best = 0, slower = 0; slower < 3; ) {
      const { rate } = run();
      slower = rate > 1.03 * best ? 0 : slower + 1;
      best = Math.max(best, rate);
    }
  }
  // three rounds, one of each kind in turn, so that a slow moment of the machine meets all of them
  for (let round = 0; round < 3; round++) for (const [kind, run] of Object.entries(kinds)) (runs[kind] ??= []).push(run());
}

let most = 0;
for (let n = 0; n < starts; n++) {
  const service = await start({ app });
  for (const each of examples) await measure(service, each);
  most = Math.max(most, resident(service).peak);
  await stop(service);
}
const rows = examples.flatMap(({ body, answer, runs }) => {
  const median = (kind, figure) => percentile(runs[kind].map((run) => run[figure]), 50);
  return Object.keys(runs).map((kind) => ({ measured: kind, question: body.length, answer: kind === 'echo' ? body.length : answer.length,
    'a second': Math.round(median(kind, 'rate')), 'p50 ms': median(kind, 'p50'), 'p99 ms': median(kind, 'p99'),
    'processor us': Math.round(median(kind, 'cost')), 'of echo': +(median(kind, 'rate') / median('echo', 'rate')).toFixed(2),
    'of both': +(median(kind, 'rate') / median('echo of both', 'rate')).toFixed(2),
    'p99 to both': +(median(kind, 'p99') / median('echo of both', 'p99')).toFixed(2),
    errors: runs[kind].reduce((sum, run) => sum + run.errors, 0) }));
});
console.table(rows);
console.log(`resident: ${most} MiB at most; ${connections} connections; starts of the virtual machine: ${starts}`);
