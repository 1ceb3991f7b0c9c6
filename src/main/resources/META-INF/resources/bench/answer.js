// An answer, drawn from what the contract says of it.

import { answersAs, answerSchema, inWords, resolved } from './contract.js';
import { element } from './dom.js';

/** The answer in the order in which a brewer needs it. */
export function answerParts(operation, answer, curl, picture) {
  const schema = answerSchema(operation);
  const properties = schema.properties;
  return [
    picture,
    part(properties.result, 'result', answer.result),
    section(properties.checks, 'checks', element('ul', { class: 'checks' }, ...answer.checks
      .filter(check => check.code !== 'request.valid').map(checkRow))),
    section(properties.safety, 'safety', element('ul', {}, ...answer.safety.map(note =>
      element('li', {}, note.message, note.hazards && note.hazards.length ? ` (${note.hazards.join(', ')})` : '')))),
    part(properties.basis, 'basis', answer.basis),
    element('section', { class: 'its-curl' }, element('h3', {}, 'The same with curl'), element('pre', { tabindex: '0' }, curl)),
  ];
}

function section(schema, name, ...children) {
  return element('section', { class: `its-${name}` }, element('h3', {}, inWords(name)), element('p', { class: 'about' }, resolved(schema).description || ''), ...children);
}

function part(schema, name, value) {
  return section(schema, name, shown(resolved(schema), value));
}

function checkRow(check) {
  return element('li', { class: check.outcome }, element('strong', {}, check.outcome), ' ', check.message);
}

function shown(schema, value, label = 'rows') {
  if (value === null || value === undefined) return element('span', {}, '–');
  if (Array.isArray(value)) return shownList(resolved(schema.items), value, label);
  if (typeof value === 'object') {
    if ('value' in value && 'unit' in value) return element('span', {}, `${value.value} ${value.unit}`);
    return element('dl', {}, ...Object.entries(value).flatMap(([name, inner]) => {
      const its = resolved((schema.properties || {})[name]);
      const long = Array.isArray(inner) ? 'rows' : undefined;
      return [element('dt', { class: long }, inWords(name)), element('dd', { class: long }, shown(its, inner, inWords(name)), its.description
        ? element('small', {}, its.description) : undefined)];
    }));
  }
  return element('span', {}, typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value));
}

/** Rows of flat objects become a table, other things a list. */
function shownList(schema, values, label) {
  if (!values.length) return element('span', {}, 'none');
  const flat = values.every(value => value && typeof value === 'object' && Object.values(value)
    .every(inner => inner === null || typeof inner !== 'object' || ('value' in inner && 'unit' in inner)));
  if (!flat) return element('ul', {}, ...values.map(value => element('li', {}, shown(schema, value))));
  const names = [...new Set(values.flatMap(value => Object.keys(value)))];
  const table = element('table', {}, element('thead', {}, element('tr', {}, ...names.map(name =>
    element('th', { scope: 'col', title: resolved((schema.properties || {})[name]).description }, inWords(name))))),
  element('tbody', {}, ...values.map(value => element('tr', {}, ...names.map(name => element('td', {}, shown({}, value[name])))))));
  const folded = values.length > 12;
  const scroll = element('div', { class: 'scroll', tabindex: '0', role: 'group', 'aria-label': label }, table);
  return folded ? element('details', {}, element('summary', {}, `${values.length} rows`), scroll) : scroll;
}

/** The picture of the same answer, where the operation draws one. */
export async function picture(operation, path, body) {
  if (!answersAs(operation, 'image/svg+xml')) return undefined;
  const response = await fetch(path, { method: 'POST', headers: { 'Content-Type': 'application/json', Accept: 'image/svg+xml' }, body });
  if (!response.ok) return undefined;
  const text = await response.text();
  const says = said(text, 'desc');
  return element('figure', {}, element('img', {
    src: URL.createObjectURL(new Blob([text], { type: 'image/svg+xml' })), alt: said(text, 'title') || 'picture of the answer',
  }), says ? element('figcaption', {}, says) : undefined);
}

/** What an element of the drawing says; the drawing itself is not parsed here, since its styles are its own. */
function said(text, name) {
  const found = new RegExp(`<${name}[^>]*>([^<]*)<`).exec(text);
  return found ? new DOMParser().parseFromString(found[1], 'text/html').body.textContent : '';
}
