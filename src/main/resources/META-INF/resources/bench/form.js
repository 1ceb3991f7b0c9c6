// A form made of a request's schema. Each field can say its value and show a fault.

import { inWords, resolved } from './contract.js';
import { element } from './dom.js';

let numbering = 0;
const lists = new Map();

/**
 * A field for a schema.
 * @returns {{node: Element, read: (pointer: string, places: Map) => any}} read gives undefined where nothing was entered
 *   and notes where each pointer stands.
 */
export function field(schema, name, value, required) {
  const full = resolved(schema);
  if (full.type === 'array') return listField(full, name, value, required);
  if (full.properties && full.properties.value && full.properties.unit) return quantityField(full, name, value, required);
  if (full.properties) return objectField(full, name, value, required);
  return plainField(full, name, value, required);
}

function identity() {
  numbering += 1;
  return `f${numbering}`;
}

function about(schema, id) {
  return schema.description ? element('p', { class: 'about', id }, schema.description) : undefined;
}

function faultNote(id) {
  return element('p', { class: 'fault', id, hidden: true });
}

function showFault(note, control) {
  return text => {
    note.textContent = text || '';
    note.hidden = !text;
    if (text) control.setAttribute('aria-invalid', 'true');
    else control.removeAttribute('aria-invalid');
  };
}

function control(schema, value, attributes) {
  if (schema.enum) {
    const options = schema.enum.map(one => element('option', { selected: one === value }, one));
    return element('select', attributes, ...(attributes.required && value !== undefined ? [] : [element('option', { value: '' }, '–')]), ...options);
  }
  if (schema.type === 'boolean') {
    return element('select', attributes, element('option', { value: '' }, '–'),
      ...['true', 'false'].map(one => element('option', { value: one, selected: String(value) === one }, one === 'true' ? 'yes' : 'no')));
  }
  const number = schema.type === 'number' || schema.type === 'integer';
  return element('input', {
    ...attributes, type: 'text', inputmode: number ? 'decimal' : undefined, value: value ?? '',
    list: number ? undefined : knownIds(schema), placeholder: value === undefined && schema.examples ? `e.g. ${schema.examples[0]}` : undefined,
  });
}

/** Ids that a table of the service offers, where the description names that table. */
function knownIds(schema) {
  const table = /\bGET (\/v1\/[a-z-]+)/.exec(schema.description || '');
  if (!table) return undefined;
  const id = `ids${table[1].replace(/\W/g, '-')}`;
  if (!lists.has(id)) {
    const list = element('datalist', { id });
    document.body.append(list);
    lists.set(id, list);
    fetch(table[1]).then(response => response.json()).then(answer => {
      for (const row of answer.result) list.append(element('option', { value: Object.values(row)[0] }));
    }).catch(() => lists.delete(id));
  }
  return id;
}

function typed(schema, text) {
  const entered = text.trim();
  if (entered === '') return undefined;
  if (schema.type === 'boolean') return entered === 'true';
  if (schema.type === 'number' || schema.type === 'integer') {
    const number = Number(entered.replace(',', '.'));
    return Number.isFinite(number) ? number : entered;
  }
  return entered;
}

function plainField(schema, name, value, required) {
  const id = identity();
  const input = control(schema, value, { id, required, 'aria-describedby': `${id}a ${id}f` });
  const note = faultNote(`${id}f`);
  const node = element('div', { class: 'field' },
    element('label', { for: id }, inWords(name)), input, note, about(schema, `${id}a`));
  return {
    node,
    read(pointer, places) {
      places.set(pointer, { control: input, show: showFault(note, input) });
      return typed(schema, input.value);
    },
  };
}

function quantityField(schema, name, value, required) {
  const id = identity();
  const unitSchema = resolved(schema.properties.unit);
  const number = control(resolved(schema.properties.value), value && value.value,
    { id, required, 'aria-describedby': `${id}a ${id}f` });
  const unit = control(unitSchema, value ? value.unit : unitSchema.enum[0], { required: true, 'aria-label': `${inWords(name)}: unit` });
  const note = faultNote(`${id}f`);
  const node = element('div', { class: 'field' }, element('label', { for: id }, inWords(name)),
    element('span', { class: 'quantity' }, number, unit), note, about(schema, `${id}a`));
  return {
    node,
    read(pointer, places) {
      const place = { control: number, show: showFault(note, number) };
      places.set(pointer, place);
      places.set(`${pointer}/value`, place);
      places.set(`${pointer}/unit`, { control: unit, show: showFault(note, unit) });
      const entered = typed({ type: 'number' }, number.value);
      return entered === undefined ? undefined : { value: entered, unit: unit.value };
    },
  };
}

function objectField(schema, name, value, required, top = false) {
  const known = value || {};
  const needed = schema.required || [];
  const members = Object.entries(schema.properties).map(([member, inner]) =>
    ({ member, required: needed.includes(member), shown: needed.includes(member) || known[member] !== undefined,
      part: field(inner, member, known[member], needed.includes(member)) }));
  const more = members.filter(one => !one.shown);
  const note = faultNote(identity());
  const inside = [
    note, ...(top ? [] : [about(schema, identity())]),
    ...members.filter(one => one.shown).map(one => one.part.node),
    more.length ? element('details', {}, element('summary', {}, 'More: ', more.map(one => inWords(one.member)).join(', ')),
      ...more.map(one => one.part.node)) : undefined,
  ];
  const node = top ? element('div', {}, ...inside.filter(Boolean))
    : element('fieldset', { tabindex: '-1' }, element('legend', {}, inWords(name)), ...inside.filter(Boolean));
  return {
    node,
    read(pointer, places) {
      places.set(pointer, { control: node, show: showFault(note, node) });
      const result = {};
      // an empty object says something where it was chosen, as in the example started from, not where it only has to be there
      let says = value !== undefined && !filled(value);
      for (const one of members) {
        const entered = one.part.read(`${pointer}/${one.member}`, places);
        if (entered === undefined) continue;
        result[one.member] = entered;
        says ||= !one.required || filled(entered);
      }
      return says || required || top ? result : undefined;
    },
  };
}

function listField(schema, name, value, required) {
  const note = faultNote(identity());
  const holder = element('div', { class: 'items' });
  let items = [];
  let added = 0;
  const single = inWords(name).replace(/s$/, '').toLowerCase();
  function add(one, focus) {
    added += 1;
    const part = field(schema.items, `${inWords(name)} ${added}`, one, true);
    const row = element('div', { class: 'item' }, part.node, element('button', { type: 'button', class: 'quiet', 'aria-label': `Remove ${single} ${added}`, onclick() {
      items = items.filter(item => item !== entry);
      row.remove();
      more.focus();
    } }, 'Remove'));
    const entry = { part };
    items.push(entry);
    holder.append(row);
    if (focus) row.querySelector('input, select').focus();
  }
  const more = element('button', { type: 'button', class: 'quiet', onclick: () => add(undefined, true) }, `Add to ${single}`);
  (value || (required ? [undefined] : [])).forEach(one => add(one, false));
  const node = element('fieldset', { tabindex: '-1' }, element('legend', {}, inWords(name)), note, about(schema, identity()), holder, more);
  return {
    node,
    read(pointer, places) {
      places.set(pointer, { control: node, show: showFault(note, node) });
      const entered = items.map((item, index) => item.part.read(`${pointer}/${index}`, places));
      return entered.some(entry => filled(entry)) ? entered : undefined;
    },
  };
}

function filled(entry) {
  return entry !== undefined && !(typeof entry === 'object' && Object.keys(entry).length === 0);
}

/** The whole request's form. */
export function requestForm(schema, value) {
  return objectField(schema, '', value, true, true);
}
