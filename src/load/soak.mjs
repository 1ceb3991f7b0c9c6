// A long steady load over all computations: memory and latency must stay flat.
// usage: node src/load/soak.mjs [SECONDS]   600 if left out; needs mvn package before
import { Agent } from 'node:http';
import { ask, example, expect, finish, percentile, resident, seconds, sleep, start, stop, tally, threads } from './lib.mjs';

const duration = Number(process.argv[2] ?? 600);
const service = await start();
const agent = new Agent({ keepAlive: true });
const questions = ['predictMash', 'evaluateCalibration', 'computeAcidDose', 'analyseWater', 'judgePhReading', 'diluteAcid', 'planMash'].map((name) => example(name));
const clients = 6;

/** Some seconds of load; answers figures. */
async function phase(length) {
  const going = seconds(length);
  const ms = [];
  const statuses = [];
  const client = async (first) => {
    for (let n = first; going(); n++) {
      const answer = await ask(service, { ...questions[n % questions.length], agent });
      ms.push(answer.ms);
      statuses.push({ status: answer.status, error: answer.error });
    }
  };
  await Promise.all(Array.from({ length: clients }, (_, n) => client(n)));
  return { rate: ms.length / length, p50: percentile(ms, 50), p99: percentile(ms, 99), rss: resident(service).now, threads: threads(service), statuses: tally(statuses) };
}

await phase(duration / 4); // until it is warm
const phases = [];
for (let n = 0; n < 6; n++) phases.push(await phase(duration / 8));
console.table(phases.map((figures) => ({ ...figures, rate: Math.round(figures.rate), p50: +figures.p50.toFixed(1), p99: +figures.p99.toFixed(1), statuses: JSON.stringify(figures.statuses) })));
const mean = (name, [from, to]) => phases.slice(from, to).reduce((sum, figures) => sum + figures[name], 0) / (to - from);
const change = (name) => mean(name, [3, 6]) / mean(name, [0, 3]);
expect('all answered', JSON.stringify(phases.at(-1).statuses), phases.every((figures) => Object.keys(figures.statuses).join() === '200'));
expect('memory, second half to first', change('rss').toFixed(3), change('rss') < 1.1);
expect('median latency, second half to first', change('p50').toFixed(2), change('p50') < 1.5);
expect('p99, second half to first', change('p99').toFixed(2), change('p99') < 2);
expect('threads more at the end', phases.at(-1).threads - phases[0].threads, phases.at(-1).threads - phases[0].threads <= 4);
expect('resident at most, MiB', resident(service).peak, resident(service).peak <= 240);
agent.destroy();
await sleep(50);
expect('exit code', await stop(service), service.child.exitCode === 0);
finish();
