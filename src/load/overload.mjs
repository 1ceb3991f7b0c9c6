// Ten times the load that the service bears: what is refused, how much is still answered, how soon it is over.
// usage: node src/load/overload.mjs [SECONDS]   seconds a phase, 10 if left out; needs mvn package before
import { Agent } from 'node:http';
import { ask, closedLoop, example, expect, finish, isProblem, openLoop, percentile, resident, seconds, sleep, start, stop, tally } from './lib.mjs';

const duration = Number(process.argv[2] ?? 10);
const service = await start();
const agent = new Agent({ keepAlive: true, maxSockets: 900 });
const plan = example('planMash');
const prediction = example('predictMash');
const ok = (answers) => answers.filter((answer) => answer.status === 200);

await closedLoop(service, plan, 4, seconds(duration), agent); // warm
const bearable = ok(await closedLoop(service, plan, 4, seconds(duration), agent)).length / duration;
const alone = await closedLoop(service, plan, 1, seconds(2), agent);
const usual = percentile(alone.map((answer) => answer.ms), 50);
console.log(`plans: ${bearable.toFixed(1)} a second at most, ${usual.toFixed(0)} ms alone`);

const began = performance.now();
const others = closedLoop(service, prediction, 1, seconds(duration), agent);
const answers = await openLoop(service, plan, 10 * bearable, duration, agent);
const took = (performance.now() - began) / 1000;
const refused = answers.filter((answer) => answer.status === 503);
const answered = ok(answers);
console.log(`10 times as many: ${JSON.stringify(tally(answers))}, answered within ${percentile(answered.map((a) => a.ms), 99).toFixed(0)} ms (p99)`);
expect('goodput under overload, of the most', (answered.length / took / bearable).toFixed(2), answered.length / took / bearable >= 0.8);
expect('answered or refused, nothing else', answers.length - answered.length - refused.length, answered.length + refused.length === answers.length);
expect('refusals that are whole problems with Retry-After', `${refused.filter((a) => isProblem(a) && a.headers['retry-after'] === '1').length} of ${refused.length}`,
  refused.length > 0 && refused.every((a) => isProblem(a) && a.headers['retry-after'] === '1'));
const meanwhile = await others;
expect('predictions answered meanwhile', JSON.stringify(tally(meanwhile)), meanwhile.length > 0 && meanwhile.every((a) => a.status === 200));

const over = performance.now();
let recovered = 0;
while ((await ask(service, { ...plan, agent })).ms > 3 * usual + 50 && recovered < 20) recovered = (performance.now() - over) / 1000;
expect('seconds until a plan takes no longer than usual', recovered.toFixed(1), recovered < 5);

// what runs on the event loop has no queue of its own: its clients' connections are the queue
await closedLoop(service, prediction, 16, seconds(duration), agent); // warm
const few = ok(await closedLoop(service, prediction, 16, seconds(duration), agent)).length;
const flood = await closedLoop(service, prediction, 160, seconds(duration), agent);
expect('predictions with 10 times the clients, of those with 16', (ok(flood).length / few).toFixed(2), ok(flood).length / few >= 0.8);
expect('of them not answered', flood.length - ok(flood).length, flood.length === ok(flood).length);
await sleep(100);
expect('resident at most, MiB', resident(service).peak, resident(service).peak <= 240);
agent.destroy();
expect('exit code', await stop(service), service.child.exitCode === 0);
finish();
