// Ten times the load that the service bears: what is refused, how much is still answered, how soon it is over.
// usage: node src/load/overload.mjs [SECONDS]   seconds a phase, 10 if left out; needs mvn package before
import { Agent } from 'node:http';
import { apart, ask, closedLoop, example, expect, finish, isProblem, openLoop, percentile, resident, seconds, sleep, start, stop, tally } from './lib.mjs';

const duration = Number(process.argv[2] ?? 10);
const service = await start({ cores: apart() });
const agent = new Agent({ keepAlive: true, maxSockets: 900 });
const plan = example('planMash');
const prediction = example('predictMash');
const ok = (answers) => answers.filter((answer) => answer.status === 200);

/** Of an answer what is judged later; thousands of bodies would only slow the client. */
const kept = (answer) => ({ status: answer.status, error: answer.error, ms: answer.ms,
  whole: answer.status === 200 || (isProblem(answer) && answer.headers['retry-after'] === '1') });

/** Plans asked for in some way while one client asks for predictions: the plans' answers, how many a second, the predictions. */
async function phase(askPlans) {
  let going = true;
  const others = closedLoop(service, prediction, 1, () => going, agent);
  const began = performance.now();
  const plans = await askPlans();
  const rate = ok(plans).length / ((performance.now() - began) / 1000);
  going = false;
  return { plans, rate, others: await others };
}

const bear = () => phase(() => closedLoop(service, plan, 4, seconds(duration), agent));
const flood = (rate) => phase(() => openLoop(service, plan, rate, duration, agent, kept));

/** Runs a phase until it has got no faster twice: what the virtual machine has yet to compile is no part of an answer. */
async function warm(run) {
  let best = 0;
  for (let slower = 0; slower < 2; ) {
    const { rate } = await run();
    slower = rate > 1.03 * best ? 0 : slower + 1;
    best = Math.max(best, rate);
    console.log(`warming up: ${rate.toFixed(0)} plans a second`);
  }
  return best;
}

const bearable = await warm(bear);
await warm(() => flood(10 * bearable));
const before = Math.max(bearable, (await bear()).rate);
const alone = await closedLoop(service, plan, 1, seconds(2), agent);
const usual = percentile(alone.map((answer) => answer.ms), 50);
console.log(`plans: ${before.toFixed(0)} a second at most, ${usual.toFixed(0)} ms alone`);

const { plans, rate, others } = await flood(10 * before);
const refused = plans.filter((answer) => answer.status === 503);
console.log(`10 times as many: ${JSON.stringify(tally(plans))}, answered within ${percentile(ok(plans).map((a) => a.ms), 99).toFixed(0)} ms (p99)`);
expect('answered or refused, nothing else', plans.length - ok(plans).length - refused.length, ok(plans).length + refused.length === plans.length);
expect('refusals that are whole problems with Retry-After', `${refused.filter((a) => a.whole).length} of ${refused.length}`,
  refused.length > 0 && refused.every((a) => a.whole));
expect('predictions answered meanwhile', JSON.stringify(tally(others)), others.length > 0 && ok(others).length === others.length);

const over = performance.now();
let recovered = 0;
while ((await ask(service, { ...plan, agent })).ms > 3 * usual + 50 && recovered < 20) recovered = (performance.now() - over) / 1000;
expect('seconds until a plan takes no longer than usual', recovered.toFixed(1), recovered < 5);

const most = Math.max(before, (await bear()).rate); // again, since it may have got faster still
expect('goodput under overload, of the most', (rate / most).toFixed(2), rate / most >= 0.8);

// what runs on the event loop has no queue of its own: its clients' connections are the queue
await closedLoop(service, prediction, 16, seconds(duration), agent); // warm
const few = ok(await closedLoop(service, prediction, 16, seconds(duration), agent)).length;
const many = await closedLoop(service, prediction, 160, seconds(duration), agent);
expect('predictions with 10 times the clients, of those with 16', (ok(many).length / few).toFixed(2), ok(many).length / few >= 0.8);
expect('of them not answered', many.length - ok(many).length, many.length === ok(many).length);
await sleep(100);
expect('resident at most, MiB', resident(service).peak, resident(service).peak <= 240);
agent.destroy();
expect('exit code', await stop(service), service.child.exitCode === 0);
finish();
