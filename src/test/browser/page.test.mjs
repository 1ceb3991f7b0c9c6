// The page at / as its visitor meets it. Usage: TUNSIDE=http://localhost:8080 npm test
// Screenshots go to the folder named by SHOTS, if it is set.

import assert from 'node:assert/strict';
import { createRequire } from 'node:module';
import { base, launched, printed } from './chromium.mjs';

const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
const browser = await launched();
const faults = [];

async function visit(viewport, colorScheme) {
  const context = await browser.newContext({ viewport, colorScheme, bypassCSP: false });
  const page = await context.newPage();
  page.on('console', message => { if (message.type() === 'error' && !/status of 4\d\d/.test(message.text())) faults.push(message.text()); });
  page.on('pageerror', error => faults.push(String(error)));
  await page.goto(`${base}/`);
  await page.waitForSelector('#form button[type=submit]');
  return page;
}

async function shot(page, name) {
  if (process.env.SHOTS) await page.screenshot({ path: `${process.env.SHOTS}/${name}.png`, fullPage: true });
}

async function clean(page, what) {
  // axe is injected past the page's own policy, by the debugger
  const source = await (await import('node:fs/promises')).readFile(AXE, 'utf8');
  const session = await page.context().newCDPSession(page);
  await session.send('Runtime.evaluate', { expression: source });
  const { result } = await session.send('Runtime.evaluate', {
    expression: 'axe.run().then(found => JSON.stringify(found.violations.map(one => [one.id, one.nodes.map(node => node.target)])))',
    awaitPromise: true,
  });
  assert.equal(result.value, '[]', `axe on ${what}`);
}

const questions = [['evaluateCalibration', 'verdict'], ['predictMash', 'pH'], ['computeAcidDose', 'outcome']];
for (const [viewport, scheme] of [[{ width: 1200, height: 900 }, 'light'], [{ width: 390, height: 800 }, 'dark']]) {
  const page = await visit(viewport, scheme);
  for (const [id, term] of questions) {
    await page.click(`#questions a[href="#${id}"]`);
    await page.waitForSelector(`#questions a[href="#${id}"][aria-current]`);
    await shot(page, `${id}-${scheme}-form`);
    await page.click('#form button[type=submit]');
    await page.waitForSelector('#answer-body dl');
    const terms = await page.locator('#answer-body dt').allTextContents();
    assert.ok(terms.some(one => one.toLowerCase() === term.toLowerCase()), `${id} answers with ${term}: ${terms.slice(0, 5)}`);
    assert.ok(await page.locator('#answer-body .checks li').count() > 0, `${id} shows checks`);
    assert.match(await page.locator('#answer-body').textContent(), /label/i, `${id} shows the deferral`);
    assert.match(await page.locator('#answer-body pre').textContent(), /^curl -s /, `${id} shows its curl`);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    assert.ok(wide <= 0, `${id} at ${viewport.width} is ${wide} px too wide`);
    await shot(page, `${id}-${scheme}-answer`);
    for (const format of ['A4', 'Letter']) assert.equal(await printed(page, format), 1, `${id} prints on one page of ${format}`);
    await clean(page, `${id} ${scheme}`);
  }
  await page.context().close();
}

// bad input shows the problem beside its field
const page = await visit({ width: 1200, height: 900 }, 'light');
await page.click('#questions a[href="#predictMash"]');
await page.waitForSelector('#questions a[href="#predictMash"][aria-current]');
const malt = page.getByLabel('Malt', { exact: true }).first();
await malt.fill('gravel');
const mass = page.getByLabel('Mass', { exact: true }).first();
await mass.fill('-3');
await page.click('#form button[type=submit]');
await page.waitForSelector('#form .fault:not([hidden])');
const shown = await page.locator('#form .fault:not([hidden])').allTextContents();
assert.ok(shown.some(text => text.includes('"gravel" is no malt class')), shown.join('|'));
assert.ok(shown.some(text => text.includes('-3')), shown.join('|'));
assert.equal(await malt.getAttribute('aria-invalid'), 'true');
assert.ok(await page.evaluate(() => document.activeElement.getAttribute('aria-invalid') === 'true'), 'the first fault has the focus');
await shot(page, 'problem');
await clean(page, 'a problem');

// the keyboard alone is enough
await page.goto(`${base}/#computeAcidDose`);
await page.waitForSelector('#questions a[href="#computeAcidDose"][aria-current]');
await page.locator('#form button[type=submit]').focus();
await page.keyboard.press('Enter');
await page.waitForSelector('#answer-body dl');
assert.equal(await page.evaluate(() => document.activeElement.id), 'answer');

assert.deepEqual(faults, [], 'no error on the console');
await browser.close();
console.log('page: three questions, two sizes, on paper, a problem and the keyboard: as they should be');
