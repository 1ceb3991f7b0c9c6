// The blocks of README's "From your own program", run as they stand against the service: only its address is put in.
// Usage: TUNSIDE=http://localhost:8080 node readme.mjs

import assert from 'node:assert/strict';
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { loadMicroPython } from '@micropython/micropython-webassembly-pyscript';

const project = new URL('../../../', import.meta.url);
const base = process.env.TUNSIDE || 'http://localhost:8080';
const folder = mkdtempSync(`${tmpdir()}/tunside-readme-`);
const readme = readFileSync(new URL('README.md', project), 'utf8');
const chapter = readme.slice(readme.indexOf('\n## From your own program'), readme.indexOf('\n## Endpoints'));

function json(file) {
  return JSON.parse(readFileSync(new URL(file, project), 'utf8'));
}

function block(language) {
  const found = [...chapter.matchAll(new RegExp(`^\`\`\`${language}\\n(.*?)^\`\`\``, 'gms'))];
  assert.equal(found.length, 1, `one block of ${language}`);
  assert.ok(found[0][1].includes('http://localhost:8080'), `${language} names the service`);
  return found[0][1].replaceAll('http://localhost:8080', base);
}

async function question(path, body) {
  const response = await fetch(base + path, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) });
  assert.equal(response.status, 200);
  return response.json();
}

function frontEnd() {
  const run = code => {
    writeFileSync(`${folder}/front-end.mjs`, code);
    return spawnSync('node', [`${folder}/front-end.mjs`], { encoding: 'utf8' });
  };
  const good = run(block('js'));
  assert.equal(good.status, 0, good.stderr);
  assert.match(good.stdout, /^pH \d\.\d+, nine times in ten from \d\.\d+ to \d\.\d+$/m);
  const bad = run(block('js').replace("'pale'", "'gravel'"));
  assert.match(bad.stderr, /\/grist\/0\/malt: "gravel" is no malt class/);
  return good.stdout;
}

/** MicroPython itself, with the two things that a controller has and a browser build lacks: a network and a probe. */
async function controller() {
  const printed = [];
  const python = await loadMicroPython({ stdout: line => printed.push(line), linebuffer: true });
  // a controller speaks HTTP/1.0
  python.registerJsModule('wire', {
    post: (url, body) => execFileSync('curl', ['-s', '--http1.0', '-w', '\n%{http_code}', '-H', 'Content-Type: application/json', '-d', '@-', url],
      { input: body, encoding: 'utf8' }),
  });
  const story = json('src/test/resources/brew-day.json');
  const series = story.find(step => step.name === 'mash').request.readings
    .map(one => [one.elapsed.value, one.potential.value, one.temperature.value]);
  python.FS.writeFile('/requests.py', `
import json as _json, wire
class Response:
    def __init__(self, text, status_code):
        self.text, self.status_code = text, status_code
    def json(self):
        return _json.loads(self.text)
def post(url, json=None):
    text, status = wire.post(url, _json.dumps(json)).rsplit("\\n", 1)
    return Response(text, int(status))
`);
  python.FS.writeFile('/probe.py', `
def read_every(seconds, times):
    readings = ${JSON.stringify(series)}
    assert len(readings) == times and readings[1][0] == seconds
    return readings
`);
  const calibrated = json('src/main/resources/examples/evaluateCalibration.json')['brew-day-1-calibrate'].response.result.calibration;
  python.FS.writeFile('/calibration.json', JSON.stringify(calibrated));
  python.runPython('import sys; sys.path.append("/"); import os; os.chdir("/")');
  python.runPython(block('python'));
  const { result } = await question('/v1/ph-readings', { liquid: 'mash', calibration: calibrated,
    readings: series.map(([elapsed, potential, temperature]) => ({ elapsed: { value: elapsed, unit: 's' },
      potential: { value: potential, unit: 'mV' }, temperature: { value: temperature, unit: 'degC' } })) });
  assert.equal(printed.join('\n').trim(), `${result.verdict} ${result.at20.ph} +- ${result.at20.standardUncertainty}`);
  assert.throws(() => python.runPython(block('python').replace('"liquid": "mash"', '"liquid": "gravel"')), /\/liquid: /);
  return printed.join('\n');
}

function recipeCheck() {
  const run = script => spawnSync('bash', ['-c', script], { cwd: folder, encoding: 'utf8' });
  const good = run(block('sh'));
  assert.equal(good.status, 0, good.stdout + good.stderr);
  assert.notEqual(run(block('sh').replace('"value": 7', '"value": 70')).status, 0, 'a mash that lands outside the range fails');
  assert.notEqual(run(block('sh').replace('"pale"', '"gravel"')).status, 0, 'a faulty question fails');
  return good.stdout;
}

console.log(frontEnd().trim());
console.log((await controller()).trim());
console.log(`the recipe passes its check: ${recipeCheck().trim()}`);
