// The bench: choose a question, fill the form, read the answer.

import { answerParts, picture } from './answer.js';
import { loadContract, operations, requestExamples, requestSchema } from './contract.js';
import { element } from './dom.js';
import { requestForm } from './form.js';

const MAIN = ['evaluateCalibration', 'predictMash', 'computeAcidDose'];
const at = id => document.getElementById(id);
let asked;

function curlOf(path, body) {
  const quoted = JSON.stringify(body, null, 1).replace(/'/g, `'\\''`);
  return `curl -s ${location.origin}${path} -H 'Content-Type: application/json' -d '${quoted}'`;
}

function choose(operation, exampleName) {
  const { id, path, summary, description } = operation;
  const examples = requestExamples(operation.operation);
  const names = Object.keys(examples);
  const name = names.includes(exampleName) ? exampleName : names[0];
  at('question-title').textContent = summary;
  at('question-about').textContent = description;
  at('start').replaceChildren(...names.map(one => element('option', { value: one, selected: one === name }, examples[one].summary || one)));
  at('start').onchange = () => choose(operation, at('start').value);
  at('start-row').hidden = names.length === 0;
  for (const link of document.querySelectorAll('#questions a')) {
    if (link.hash === `#${id}`) link.setAttribute('aria-current', 'page');
    else link.removeAttribute('aria-current');
  }
  const form = requestForm(requestSchema(operation.operation), name && examples[name].value);
  at('form').replaceChildren(form.node, element('button', { type: 'submit' }, 'Ask'));
  at('form').onsubmit = event => {
    event.preventDefault();
    ask(operation, form);
  };
  at('answer').hidden = true;
  document.title = `Tunside: ${summary}`;
  asked = path;
}

async function ask(operation, form) {
  const places = new Map();
  const body = form.read('', places);
  for (const place of places.values()) place.show('');
  const text = JSON.stringify(body);
  let response;
  let answer;
  try {
    response = await fetch(operation.path, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: text });
    answer = await response.json();
  } catch {
    show('Answer', element('p', { class: 'fault', role: 'alert' }, 'The service cannot be reached.'));
    return;
  }
  if (asked !== operation.path) return;
  if (response.ok) {
    show('Answer', ...answerParts(operation.operation, answer, curlOf(operation.path, body), await picture(operation.operation, operation.path, text)));
    at('answer').focus();
  } else {
    problem(answer, places);
  }
}

/** Each fault beside its field; those without one in a list. */
function problem(answer, places) {
  let first;
  const rest = [];
  for (const fault of answer.errors || []) {
    const place = places.get(fault.pointer);
    if (place && fault.pointer !== '') {
      for (let node = place.control.parentElement; node; node = node.parentElement) if (node.tagName === 'DETAILS') node.open = true;
      place.show(fault.detail);
      first ||= place.control;
    } else {
      rest.push(element('li', {}, fault.pointer ? `${fault.pointer} ` : '', fault.detail));
    }
  }
  show('Problem', element('p', { role: 'alert' }, answer.title), rest.length ? element('ul', {}, ...rest) : undefined,
    element('h3', {}, 'Safety'), element('ul', {}, ...(answer.safety || []).map(note => element('li', {}, note.message))));
  (first || at('answer')).focus();
}

function show(title, ...children) {
  at('answer-title').textContent = title;
  at('answer-body').replaceChildren(...children.filter(Boolean));
  at('answer').hidden = false;
}

async function start() {
  const contract = await loadContract();
  // what it is, and the word of caution at the end; what lies between is for programs
  const paragraphs = contract.info.description.trim().replace(/`/g, '').split(/\n\s*\n/);
  at('about').textContent = `${contract.info.summary} ${paragraphs[paragraphs.length - 1]}`;
  const all = operations();
  at('operations').replaceChildren(...all.map(one => element('li', {},
    element('code', {}, `${one.method.toUpperCase()} ${one.path}`), ` ${one.summary}`)));
  const asking = all.filter(one => one.method === 'post');
  asking.sort((a, b) => (MAIN.indexOf(a.id) + 9) % 9 - (MAIN.indexOf(b.id) + 9) % 9);
  at('questions').replaceChildren(...asking.map(one => element('li', {}, element('a', { href: `#${one.id}` }, one.summary))));
  const go = () => choose(asking.find(one => `#${one.id}` === location.hash) || asking[0]);
  addEventListener('hashchange', () => {
    go();
    at('work').focus();
  });
  go();
}

start().catch(() => {
  at('about').textContent = 'The contract cannot be read; reload the page.';
});
