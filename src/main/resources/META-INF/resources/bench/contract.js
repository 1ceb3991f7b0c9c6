// The contract: where every word and every field of this page comes from.

let contract;

export async function loadContract() {
  const response = await fetch('/q/openapi?format=json');
  contract = await response.json();
  return contract;
}

/** All operations, as {id, method, path, summary, description, operation}. */
export function operations() {
  return Object.entries(contract.paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, operation]) => ({
      id: operation.operationId, method, path, operation,
      summary: operation.summary, description: operation.description,
    })));
}

/** A schema with its reference followed; what stands beside the reference (a description) wins. */
export function resolved(schema) {
  if (!schema) return {};
  let result = schema;
  const choice = (schema.anyOf || schema.oneOf || []).find(one => one.type !== 'null');
  if (choice) result = { ...resolved(choice), ...without(schema, ['anyOf', 'oneOf']), type: resolved(choice).type };
  if (schema.$ref) {
    const target = resolved(contract.components.schemas[schema.$ref.split('/').pop()]);
    result = { ...target, ...without(schema, ['$ref', 'type']) };
  }
  if (Array.isArray(result.type)) result = { ...result, type: result.type.find(type => type !== 'null') };
  return result;
}

function without(object, names) {
  return Object.fromEntries(Object.entries(object).filter(([name]) => !names.includes(name)));
}

export function requestSchema(operation) {
  return resolved(operation.requestBody.content['application/json'].schema);
}

/** Named examples of a request: {name: {summary, value}}. */
export function requestExamples(operation) {
  return operation.requestBody.content['application/json'].examples || {};
}

export function answerSchema(operation) {
  return resolved(operation.responses['200'].content['application/json'].schema);
}

export function answersAs(operation, type) {
  return type in operation.responses['200'].content;
}

/** A member's name in words. */
export function inWords(name) {
  return name.replace(/([a-z0-9])([A-Z])/g, '$1 $2').replace(/[-_]/g, ' ').toLowerCase()
    .replace(/\bph\b/g, 'pH').replace(/\bmeq\b/g, 'mEq').replace(/^./, first => first.toUpperCase())
    .replace(/^PH\b/, 'pH');
}
