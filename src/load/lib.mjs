// What the load and fault scripts share: the service as its image starts it, questions from the examples, figures.
import { execFileSync, spawn } from 'node:child_process';
import { readFileSync, readdirSync } from 'node:fs';
import http from 'node:http';
import path from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';

export { sleep };
export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const firstPort = Number(process.env.TUNSIDE_LOAD_PORT ?? 18500);

const dockerfile = readFileSync(`${root}/src/main/docker/Dockerfile`, 'utf8');

/** How the image makes the C library hold memory. */
const allocation = Object.fromEntries([...dockerfile.matchAll(/(MALLOC_\w+)=(\d+)/g)].map(([, name, value]) => [name, value]));

/** Java's options of the image, without its class archive. */
export function imageOptions() {
  const entry = dockerfile.match(/^ENTRYPOINT (\[.*\])$/m)[1];
  return JSON.parse(entry).filter((word) => word.startsWith('-X') && !word.includes('SharedArchiveFile'));
}

/** Puts this client on the last of the machine's cores and answers the others, for the service; all where there is but one. */
export function apart() {
  const cores = readFileSync('/proc/self/status', 'utf8').match(/^Cpus_allowed_list:\s+(.*)$/m)[1].split(',').flatMap((range) => {
    const [first, last = first] = range.split('-').map(Number);
    return Array.from({ length: last - first + 1 }, (_, n) => first + n);
  });
  if (cores.length > 1) execFileSync('taskset', ['--all-tasks', '--pid', '--cpu-list', String(cores.pop()), String(process.pid)]);
  return cores.join();
}

/** Starts the packaged service on port number `n` of this run, on some or all cores, and waits until it is ready. */
export async function start({ n = 0, app = 'target/quarkus-app', env = {}, options = imageOptions(), cores } = {}) {
  const port = firstPort + 2 * n;
  const management = port + 1;
  const command = [...(cores ? ['taskset', '--cpu-list', cores] : []), 'java', ...options, '-jar', 'quarkus-run.jar'];
  const child = spawn(command[0], command.slice(1), {
    cwd: path.resolve(root, process.env.TUNSIDE_APP ?? app),
    env: { ...process.env, ...allocation, QUARKUS_HTTP_PORT: port, QUARKUS_MANAGEMENT_PORT: management, ...env },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const service = { child, port, management, url: `http://127.0.0.1:${port}`, log: '' };
  child.stdout.on('data', (text) => (service.log += text));
  service.ended = new Promise((resolve) => child.once('exit', (code, signal) => resolve(code ?? signal)));
  process.once('exit', () => child.kill('SIGKILL'));
  for (let tries = 0; ; tries++) {
    if ((await ready(service)) === 200) return service;
    if (tries > 600 || child.exitCode !== null) throw new Error(`the service does not start:\n${service.log}`);
    await sleep(100);
  }
}

/** Ends the service as a cluster does; answers its exit code. */
export async function stop(service) {
  service.child.kill('SIGTERM');
  return service.ended;
}

/** Status of the readiness probe; 0 where nobody answers. */
export async function ready(service) {
  return (await ask(service, { method: 'GET', path: '/q/health/ready', port: service.management, timeout: 10000 })).status;
}

/** One request; never throws: a connection that breaks has status 0 and an `error`. */
export function ask(service, { method = 'POST', path = '/', port = service.port, headers = {}, body, agent = false, timeout = 60000 }) {
  return new Promise((resolve) => {
    const began = performance.now();
    const done = (answer) => resolve({ ms: performance.now() - began, ...answer });
    const request = http.request({ host: '127.0.0.1', port, method, path, agent, timeout,
      headers: body === undefined ? headers : { 'Content-Type': 'application/json', 'Content-Length': Buffer.byteLength(body), ...headers } });
    request.once('response', (response) => {
      const pieces = [];
      response.on('data', (piece) => pieces.push(piece));
      response.once('end', () => done({ status: response.statusCode, headers: response.headers, body: Buffer.concat(pieces).toString() }));
      response.once('error', (error) => done({ status: 0, error: error.code ?? error.message }));
    });
    request.once('timeout', () => request.destroy(new Error('timeout')));
    request.once('error', (error) => done({ status: 0, error: error.code ?? error.message }));
    request.end(body);
  });
}

/** Paths of the operations that have examples, from the contract. */
const addresses = {
  evaluateCalibration: '/v1/calibration-evaluations',
  predictMash: '/v1/mash-predictions',
  computeAcidDose: '/v1/acid-doses',
  planMash: '/v1/mash-plans',
  analyseWater: '/v1/water-analyses',
  judgePhReading: '/v1/ph-readings',
  diluteAcid: '/v1/acid-dilutions',
  reviewBrews: '/v1/brew-reviews',
};

/** The question of an example, its first where no name is given, with the recorded answer. */
export function example(operation, name) {
  const all = JSON.parse(readFileSync(`${root}/src/main/resources/examples/${operation}.json`, 'utf8'));
  const { request, response } = all[name ?? Object.keys(all)[0]];
  return { path: addresses[operation], body: JSON.stringify(request), answer: JSON.stringify(response) };
}

/** Megabytes that the service holds in memory now, and at most so far. */
export function resident(service) {
  const status = readFileSync(`/proc/${service.child.pid}/status`, 'utf8');
  const mib = (name) => Math.round(Number(status.match(new RegExp(`^${name}:\\s+(\\d+)`, 'm'))[1]) / 1024);
  return { now: mib('VmRSS'), peak: mib('VmHWM') };
}

/** Seconds of processor that the service has used. */
export function processorSeconds(service) {
  const [user, system] = readFileSync(`/proc/${service.child.pid}/stat`, 'utf8').replace(/.*\) /, '').split(' ').slice(11, 13);
  return (Number(user) + Number(system)) / 100;
}

export const threads = (service) => readdirSync(`/proc/${service.child.pid}/task`).length;

export function percentile(values, percent) {
  const sorted = Float64Array.from(values).sort();
  return sorted[Math.min(sorted.length - 1, Math.floor((sorted.length * percent) / 100))] ?? NaN;
}

/** How many of each status. */
export function tally(answers) {
  const counts = {};
  for (const { status, error } of answers) counts[status || error] = (counts[status || error] ?? 0) + 1;
  return counts;
}

/** Sends `rate` requests a second for some seconds, whether or not answers come; answers what `kept` takes of all answers. */
export async function openLoop(service, question, rate, seconds, agent, kept) {
  const began = performance.now();
  const answers = [];
  for (let sent = 0; sent < rate * seconds; ) {
    const due = Math.min(rate * seconds, ((performance.now() - began) / 1000) * rate);
    for (; sent < due; sent++) answers.push(ask(service, { ...question, agent }).then(kept));
    await sleep(2);
  }
  return Promise.all(answers);
}

/** Keeps `clients` clients asking, each again as soon as it has its answer, while `going()`; answers all answers. */
export async function closedLoop(service, question, clients, going, agent) {
  const answers = [];
  const client = async () => {
    while (going()) answers.push(await ask(typeof service === 'function' ? service() : service, { ...question, agent }));
  };
  await Promise.all(Array.from({ length: clients }, client));
  return answers;
}

/** True for so many seconds from now. */
export const seconds = (duration) => {
  const end = performance.now() + 1000 * duration;
  return () => performance.now() < end;
};

let failed = false;

/** Prints a figure against its bound; a figure beyond it fails the script at its end. */
export function expect(what, figure, holds) {
  console.log(`${holds ? 'ok  ' : 'FAIL'} ${what}: ${figure}`);
  failed ||= !holds;
}

export function finish() {
  process.exit(failed ? 1 : 0);
}

/** A complete problem, as every refusal must be. */
export function isProblem(answer) {
  try {
    const problem = JSON.parse(answer.body);
    return answer.headers['content-type'] === 'application/problem+json' && problem.status === answer.status
      && problem.checks.length > 0 && problem.safety.length > 0;
  } catch {
    return false;
  }
}
