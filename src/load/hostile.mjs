// Clients that mean no good: slow, silent, oversized, smuggling. Each is cut off or told so; no 500, no thread lost.
// usage: node src/load/hostile.mjs [CLIENTS]   clients of each slow kind, 100 if left out; needs mvn package before
import { connect } from 'node:net';
import { gzipSync } from 'node:zlib';
import { ask, example, expect, finish, isProblem, resident, sleep, start, stop, threads } from './lib.mjs';

const clients = Number(process.argv[2] ?? 100);
const service = await start({ env: { QUARKUS_HTTP_IDLE_TIMEOUT: '10S' } });
const prediction = example('predictMash');
const { path } = prediction;
for (let i = 0; i < 50; i++) await ask(service, prediction);
const before = threads(service);

// those that take their time
const head = `POST ${path} HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\n`;
const kinds = {
  'a body, one byte a second': [`${head}Content-Length: 2000\r\n\r\n`, ' '],
  'a header, one byte a second': [`${head}X-Long: `, 'a'],
  'chunks, one byte a second': [`${head}Transfer-Encoding: chunked\r\n\r\n`, '1\r\n \r\n'],
  'lines of questions, one byte a second': [`POST ${path} HTTP/1.1\r\nHost: x\r\nContent-Type: application/x-ndjson\r\nTransfer-Encoding: chunked\r\n\r\n`, '1\r\n{\r\n'],
  'nothing at all': ['', ''],
  'half a request, then nothing': [`${head}Content-Length: 2000\r\n\r\n{`, ''],
};
const slow = Object.entries(kinds).map(([kind, [first, more]]) => {
  const began = performance.now();
  const ends = Array.from({ length: clients }, () => new Promise((resolve) => {
    const socket = connect(service.port, '127.0.0.1');
    if (first) socket.write(first);
    const drip = more && setInterval(() => socket.write(more), 1000);
    socket.on('error', () => {}).on('data', () => {}).once('close', () => {
      clearInterval(drip);
      resolve((performance.now() - began) / 1000);
    });
  }));
  return [kind, ends];
});
await sleep(3000);
const meanwhile = [];
for (let i = 0; i < 20; i++) meanwhile.push(await ask(service, prediction));
expect(`questions answered while ${clients * slow.length} slow clients hang on, slowest in ms`,
  Math.max(...meanwhile.map((a) => a.ms)).toFixed(0), meanwhile.every((a) => a.status === 200 && a.ms < 2000));
for (const [kind, ends] of slow) {
  const last = Math.max(...(await Promise.race([Promise.all(ends), sleep(40000, [Infinity])])));
  expect(`${kind}: cut off within s`, last.toFixed(1), last < 20);
}

// those that send too much, or what must not be
const deep = '{"grist":'.repeat(5000);
const refusals = {
  'headers of 9 KiB': { headers: { 'X-Long': 'a'.repeat(9000) }, want: 431 },
  'an address of 3000 characters': { path: `${path}?${'a'.repeat(3000)}`, want: 414 },
  'nesting 5000 deep': { body: deep, want: 400 },
  'arrays 100,000 deep': { body: '['.repeat(100000), want: 400 },
  'a number of 100,000 digits': { body: `{"temperature":${'9'.repeat(100000)}}`, want: 400 },
  'an exponent of ten digits': { body: '{"grist":[{"mass":{"value":1e2147483647}}]}', want: 400 },
  'a bomb of 100 MB in gzip': { body: gzipSync(Buffer.alloc(100e6, ' ')), headers: { 'Content-Encoding': 'gzip' }, want: [400, 413, 415] },
  'a body of 1 MB': { body: ' '.repeat(1e6), want: 413 },
  'the same member 10,000 times': { body: `{${'"a":1,'.repeat(10000)}"a":1}`, want: 400 },
};
for (const [kind, { want, ...request }] of Object.entries(refusals)) {
  const answer = await ask(service, { body: prediction.body, path, ...request });
  expect(`${kind}: ${want}, with a problem`, answer.status || answer.error, [want].flat().includes(answer.status) && isProblem(answer));
}

/** Sends bytes as they are; answers the statuses that came back before the connection ended or was quiet for five seconds. */
function raw(bytes) {
  return new Promise((resolve) => {
    const socket = connect(service.port, '127.0.0.1');
    let text = '';
    const end = () => socket.destroy() && resolve([...text.matchAll(/HTTP\/1\.1 (\d{3}) /g)].map((match) => Number(match[1])));
    socket.setTimeout(5000, end).on('error', () => {}).on('data', (data) => (text += data.toString('latin1'))).once('close', end);
    socket.write(bytes);
  });
}
const whole = `${head}Content-Length: ${prediction.body.length}\r\n\r\n${prediction.body}`;
const pipelined = await raw(whole.repeat(50));
expect('50 requests in one piece, answered', pipelined.length, pipelined.length === 50 && pipelined.every((status) => status === 200));
const cuts = {
  'headers of 100 KiB': `GET / HTTP/1.1\r\nHost: x\r\nX-Long: ${'a'.repeat(100000)}\r\n\r\n`,
  'a length and chunks at once': `${head}Content-Length: 4\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\nGET /smuggled HTTP/1.1\r\n\r\n`,
  'two lengths': `${head}Content-Length: 4\r\nContent-Length: 5\r\n\r\n{}{}`,
  'a negative length': `${head}Content-Length: -1\r\n\r\n`,
  'a length of twenty digits': `${head}Content-Length: 99999999999999999999\r\n\r\n`,
  'no HTTP': '\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03\r\n\r\n',
};
for (const [kind, bytes] of Object.entries(cuts)) {
  const statuses = await raw(bytes);
  expect(`${kind}: refused or cut off`, statuses, statuses.length <= 1 && statuses.every((status) => status >= 400 && status < 500));
}

await sleep(1000);
expect('threads more than before', threads(service) - before, threads(service) - before <= 10);
const metrics = (await ask(service, { method: 'GET', path: '/q/metrics', port: service.management })).body;
const broken = metrics.split('\n').filter((line) => line.startsWith('http_server_requests_seconds_count') && line.includes('status="500"'));
expect('answers with 500', broken.length, broken.length === 0);
expect('a question afterwards', (await ask(service, prediction)).status, (await ask(service, prediction)).status === 200);
expect('resident at most, MiB', resident(service).peak, resident(service).peak <= 240);
expect('exit code', await stop(service), service.child.exitCode === 0);
finish();
