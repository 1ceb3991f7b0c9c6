// The brew day of the README through the generated client: each question is made of the typed answers before it, and each
// answer, read into its types and written back, must be the recorded one. Usage: TUNSIDE=http://localhost:8080 npm test

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import {
  AcidApi, AcidDilutionRequestFromJSON, AcidDilutionResponseToJSON, AcidDoseRequestFromJSON, AcidDoseResponseToJSON,
  CalibrationEvaluationRequestFromJSON, CalibrationEvaluationResponseToJSON, Configuration, ElectrodeApi, MashApi,
  MashPredictionRequestFromJSON, MashPredictionResponseToJSON, PhReadingRequestFromJSON, PhReadingResponseToJSON,
  type Problem, ProblemFromJSON, ResponseError, WaterAnalysisRequestFromJSON, WaterAnalysisResponseToJSON, WaterApi,
} from '../../../target/clients/typescript';

type Json = null | boolean | number | string | Json[] | { [name: string]: Json };
interface Step { name: string; operation: string; say: string; show: string[]; request: Json }

const project = `${__dirname}/../../../../../..`;
const service = new Configuration({ basePath: process.env.TUNSIDE ?? 'http://localhost:8080' });
const acid = new AcidApi(service);
const electrode = new ElectrodeApi(service);
const mash = new MashApi(service);
const water = new WaterApi(service);

const asks: Record<string, (question: Json) => Promise<unknown>> = {
  evaluateCalibration: async question =>
    CalibrationEvaluationResponseToJSON(await electrode.evaluateCalibration(CalibrationEvaluationRequestFromJSON(question))),
  judgePhReading: async question => PhReadingResponseToJSON(await electrode.judgePhReading(PhReadingRequestFromJSON(question))),
  analyseWater: async question => WaterAnalysisResponseToJSON(await water.analyseWater(WaterAnalysisRequestFromJSON(question))),
  diluteAcid: async question => AcidDilutionResponseToJSON(await acid.diluteAcid(AcidDilutionRequestFromJSON(question))),
  computeAcidDose: async question => AcidDoseResponseToJSON(await acid.computeAcidDose(AcidDoseRequestFromJSON(question))),
  predictMash: async question => MashPredictionResponseToJSON(await mash.predictMash(MashPredictionRequestFromJSON(question))),
};

function json(file: string): any {
  return JSON.parse(readFileSync(`${project}/${file}`, 'utf8'));
}

/** What goes over the wire: members that are not there are left out. */
function sent(value: unknown): Json {
  return JSON.parse(JSON.stringify(value));
}

function at(answer: any, pointer: string): Json {
  const found = pointer.split('/').slice(1).reduce((inner, name) => inner?.[name], answer);
  assert.notEqual(found, undefined, `nothing at ${pointer}`);
  return found;
}

/** The question with {"$from": step, "at": pointer} replaced by what that step answered. */
function filled(part: any, answers: Map<string, Json>): Json {
  if (part === null || typeof part !== 'object') return part;
  if (Array.isArray(part)) return part.map(item => filled(item, answers));
  if ('$from' in part) return at(answers.get(part.$from), part.at);
  return Object.fromEntries(Object.entries(part).map(([name, inner]) => [name, filled(inner, answers)]));
}

async function brewDay(steps: Step[]): Promise<void> {
  const answers = new Map<string, Json>();
  for (const [index, step] of steps.entries()) {
    const answer = sent(await asks[step.operation](filled(step.request, answers)));
    const recorded = json(`src/main/resources/examples/${step.operation}.json`)[`brew-day-${index + 1}-${step.name}`];
    assert.deepEqual(answer, recorded.response, step.name);
    answers.set(step.name, answer);
    console.log(`${index + 1}. ${step.say}\n   ${step.show.map(pointer => JSON.stringify(at(answer, pointer))).join(', ')}`);
  }
}

/** The same as a client developer writes it: the compiler knows every member and every unit. */
async function typed(): Promise<void> {
  const { result, safety } = await acid.computeAcidDose({
    liquid: 'mash',
    measuredPh: 5.72,
    targetPh: 5.4,
    acid: 'lactic',
    strength: { value: 80, unit: '%w/w' },
    grist: [{ malt: 'pale', mass: { value: 4.8, unit: 'kg' } }],
    liquor: { volume: { value: 16, unit: 'L' }, water: { calcium: { value: 60, unit: 'mg/L' } } },
  });
  assert.equal(result.outcome, 'dose');
  const millilitres: number | undefined = result.addNow?.volume?.value;
  assert.ok(millilitres !== undefined && millilitres > 0 && millilitres < 20, `${millilitres} mL`);
  assert.ok(safety.length > 0);
}

/** A question with two faults is answered by a typed problem that names both. */
async function faulty(): Promise<void> {
  const malt = { malt: 'gravel', mass: { value: -3, unit: 'kg' as const } };
  const problem = await mash.predictMash({ grist: [malt], liquor: { volume: { value: 15, unit: 'L' } } })
    .then(() => assert.fail('a mash of gravel was predicted'), problemOf);
  assert.equal(problem.status, 400);
  assert.deepEqual(problem.errors?.map(fault => fault.pointer).sort(), ['/grist/0/malt', '/grist/0/mass/value']);
  assert.ok(problem.safety.length > 0);
  console.log(`A faulty question: ${problem.errors?.map(fault => `${fault.pointer}: ${fault.detail}`).join(' ')}`);
}

async function problemOf(error: unknown): Promise<Problem> {
  if (error instanceof ResponseError) return ProblemFromJSON(await error.response.json());
  throw error;
}

async function main(): Promise<void> {
  await brewDay(json('src/test/resources/brew-day.json'));
  await typed();
  await faulty();
}

main().catch(error => {
  console.error(error);
  process.exitCode = 1;
});
