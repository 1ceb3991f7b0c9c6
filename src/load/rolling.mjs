// Two instances behind a gateway, restarted one after the other under load: no request may fail.
// usage: node src/load/rolling.mjs [SECONDS]   seconds of load between restarts, 5 if left out; needs haproxy, mvn package before
import { spawn } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { Agent } from 'node:http';
import { ask, closedLoop, example, expect, finish, percentile, root, sleep, start, stop, tally } from './lib.mjs';

const between = Number(process.argv[2] ?? 5) * 1000;
const env = { QUARKUS_SHUTDOWN_DELAY: '5S' };
const instances = [await start({ n: 0, env }), await start({ n: 1, env })];
const gateway = { port: instances[0].port + 8 };
mkdirSync(`${root}/target/load`, { recursive: true });
writeFileSync(`${root}/target/load/haproxy.cfg`, `
defaults
  mode http
  timeout connect 2s
  timeout client 30s
  timeout server 30s
  timeout check 5s
  retries 2
  option redispatch
frontend in
  bind 127.0.0.1:${gateway.port}
  default_backend pods
backend pods
  option httpchk GET /q/health/ready
${instances.map(({ port, management }, n) => `  server pod${n} 127.0.0.1:${port} check port ${management} inter 300ms fall 2 rise 2`).join('\n')}
`);
const haproxy = spawn('/usr/sbin/haproxy', ['-db', '-f', `${root}/target/load/haproxy.cfg`], { stdio: ['ignore', 'ignore', 'ignore'] });
process.once('exit', () => haproxy.kill('SIGKILL'));
while ((await ask(gateway, { method: 'GET', path: '/v1/sources' })).status !== 200) await sleep(200);

const agent = new Agent({ keepAlive: true });
let going = true;
const clients = [
  closedLoop(gateway, example('predictMash'), 6, () => going, agent),
  closedLoop(gateway, example('planMash'), 2, () => going, agent),
];
const codes = [];
for (const n of [0, 1]) {
  await sleep(between);
  codes.push(await stop(instances[n]));
  instances[n] = await start({ n, env });
  await sleep(3000); // until the gateway has seen it twice
}
await sleep(between);
going = false;
const answers = (await Promise.all(clients)).flat();
expect('answers', JSON.stringify(tally(answers)), answers.length > 0 && answers.every((answer) => answer.status === 200));
expect('exit codes', codes, codes.every((code) => code === 0));
console.log(`p50 ${percentile(answers.map((a) => a.ms), 50).toFixed(1)} ms, p99 ${percentile(answers.map((a) => a.ms), 99).toFixed(1)} ms, slowest ${percentile(answers.map((a) => a.ms), 100).toFixed(0)} ms`);
for (const instance of instances) await stop(instance);
finish();
