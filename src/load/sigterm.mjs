// SIGTERM under load, as a gateway sees it: readiness goes down, it sends no more, and what it has sent is answered.
// usage: node src/load/sigterm.mjs [SECONDS]   seconds of load before the signal, 5 if left out; needs mvn package before
import { Agent } from 'node:http';
import { closedLoop, example, expect, finish, ready, sleep, start, tally } from './lib.mjs';

const before = Number(process.argv[2] ?? 5);
const service = await start({ env: { QUARKUS_SHUTDOWN_DELAY: '5S' } });
const agent = new Agent({ keepAlive: true });
let open = true;
const clients = [
  closedLoop(service, example('predictMash'), 8, () => open, agent),
  closedLoop(service, example('planMash'), 4, () => open, agent),
];
await sleep(before * 1000);
const began = performance.now();
service.child.kill('SIGTERM');
let down = NaN;
while (open && performance.now() - began < 20000) {
  const status = await ready(service);
  if (status !== 200) {
    expect('readiness says', status, status === 503);
    down = performance.now() - began;
    open = false;
  }
  await sleep(50);
}
const answers = (await Promise.all(clients)).flat();
const code = await service.ended;
expect('ms until readiness is down', down.toFixed(0), down < 4000);
expect('answers', JSON.stringify(tally(answers)), answers.length > 0 && answers.every((answer) => answer.status === 200));
expect('exit code', code, code === 0);
console.log(`ended ${((performance.now() - began) / 1000).toFixed(1)} s after the signal`);
finish();
