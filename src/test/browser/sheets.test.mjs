// Every sheet prints on one page, of A4 and of US Letter: those of all examples, a full brewery's, and the largest questions that
// the service takes. Usage: TUNSIDE=http://localhost:8080 npm test
// The prints go to the folder named by SHOTS, if it is set.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { base, launched, printed } from './chromium.mjs';

const examples = new URL('../../main/resources/examples/', import.meta.url);
const PATHS = { predictMash: '/v1/mash-predictions', computeAcidDose: '/v1/acid-doses' };

function json(operation) {
  return JSON.parse(readFileSync(new URL(`${operation}.json`, examples), 'utf8'));
}

function many(count, make) {
  return Array.from({ length: count }, (_, index) => make(index));
}

const calibration = json('evaluateCalibration')['brew-day-1-calibrate'].response.result.calibration;
const classes = Object.values(json('listMalts'))[0].response.result.map(row => row.malt).filter(malt => malt !== 'acidulated');
const salts = ['gypsum', 'calcium-chloride-dihydrate', 'epsom-salt'];
const water = {
  calcium: { value: 74, unit: 'mg/L' }, magnesium: { value: 9, unit: 'mg/L' }, sodium: { value: 17, unit: 'mg/L' },
  chloride: { value: 34, unit: 'mg/L' }, sulfate: { value: 46, unit: 'mg/L' }, alkalinity: { value: 9, unit: 'dH' },
};

const colours = { caramel: 80, roasted: 1200, 'caramel-wheat': 120, brown: 150, amber: 60 };

/** A grist that a brewery may use: a base malt, and less of each other class. */
function brewery(malts, additions, sources, treatments) {
  return {
    grist: many(malts, index => {
      const malt = classes[index % classes.length];
      return { malt, mass: { value: index === 0 ? 15 : 0.25, unit: 'kg' }, colour: colours[malt] && { value: colours[malt], unit: 'EBC' } };
    }),
    liquor: {
      sources: many(sources, index => ({ name: `well ${index + 1} behind the shed`, volume: { value: 48 / sources, unit: 'L' }, water })),
      treatments: [
        { boiling: {} },
        ...many(treatments - 2, index => ({ salt: salts[index % salts.length], mass: { value: Number((2 + index / 10).toFixed(1)), unit: 'g' } })),
        { acid: 'lactic', strength: { value: 80, unit: '%w/w' }, volume: { value: 0.5, unit: 'mL' } },
      ],
    },
    additions: many(additions, index => ({ salt: salts[index % salts.length], mass: { value: Number((1 + index / 10).toFixed(1)), unit: 'g' } })),
    calibration,
  };
}

function history(events) {
  return many(events, index => index % 2 === 0
    ? { addedVolume: { value: 0.5, unit: 'mL' } } : { ph: Number((5.69 - 0.01 * index).toFixed(2)) });
}

function dose(mash, events, acid = 'lactic', strength = 80) {
  return { liquid: 'mash', measuredPh: 5.7, phUncertainty: 0.03, sharedUncertainty: 0.015, targetPh: 5.4, acid,
    strength: { value: strength, unit: '%w/w' }, ...mash, history: history(events) };
}

const cases = [];
for (const operation of Object.keys(PATHS)) {
  for (const [name, example] of Object.entries(json(operation))) {
    if (example.status === 200) cases.push([`${operation}-${name}`, operation, example.request]);
  }
}
const full = brewery(12, 10, 3, 5);
const largest = brewery(64, 32, 32, 16);
cases.push(['full-mash', 'predictMash', full], ['full-dose', 'computeAcidDose', dose(full, 16)],
  ['full-dose-hydrochloric', 'computeAcidDose', dose(full, 0, 'hydrochloric', 31)],
  ['largest-mash', 'predictMash', largest], ['largest-dose', 'computeAcidDose', dose(largest, 40)]);

const browser = await launched();
const page = await browser.newPage();
const faults = [];
for (const [name, operation, body] of cases) {
  const response = await fetch(base + PATHS[operation], {
    method: 'POST', headers: { 'Content-Type': 'application/json', Accept: 'text/html' }, body: JSON.stringify(body),
  });
  const sheet = await response.text();
  assert.equal(response.status, 200, `${name}: ${sheet}`);
  if (name.startsWith('full-') && sheet.includes('as in the question')) faults.push(`${name} does not list all that goes in`);
  await page.setContent(sheet);
  for (const format of ['A4', 'Letter']) {
    const pages = await printed(page, format, process.env.SHOTS && `${process.env.SHOTS}/${name}-${format}.pdf`);
    if (pages !== 1) faults.push(`${name} takes ${pages} pages of ${format}`);
  }
}
await browser.close();
assert.deepEqual(faults, []);
console.log(`${cases.length} sheets, each on one page of A4 and of US Letter`);
