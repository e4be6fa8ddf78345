import type { z } from 'zod';
import { NEW_PARTS } from '../case.ts';
import { checkModel } from '../checks/checkModel.ts';
import { maskOf } from '../model/circuits.ts';
import { ModelFault } from '../model/refusal.ts';
import { openTracing } from '../openTracing.ts';
import { renameFiles } from '../renamed/renameFiles.ts';
import { deedsEver } from '../safety/deeds.ts';
import type { Came, FaultModel, Gate, ModelData, ModelRefusal, Outcome, OutcomeMeaning, Step } from '../types.ts';
import { expandRows } from './expandRows.ts';
import { circuitOf, harmOfStep } from './harmOfStep.ts';
import { RAW_FILES, type RawFileName, type RawModel, type RawStep } from './raw.ts';

/**
 * Reads a fault model's files (by file name), checks them, expands the compact rules to one row per
 * fault and opens the model.
 * Ids that were renamed since are read as those of today. A refusal names file, field and reason; nothing is mended silently.
 * @throws whatever is no `ModelFault`: a defect of the program, not of the files.
 */
export function loadFaultModel(files: { readonly [file: string]: unknown }): FaultModel | ModelRefusal {
  try {
    const raw = readFiles(renameFiles(files));
    const model = openTracing(assemble(raw));
    checkModel(model);
    return model;
  } catch (error) {
    if (error instanceof ModelFault) return error.refusal;
    throw error;
  }
}

function readFiles(files: { readonly [file: string]: unknown }): RawModel {
  const names = Object.keys(RAW_FILES) as RawFileName[];
  const strange = Object.keys(files).find((name) => !names.includes(name as RawFileName));
  if (strange !== undefined) throw new ModelFault(strange, '', 'not a file of a fault model');
  const raw: { [name: string]: unknown } = {};
  for (const name of names) {
    if (files[name] === undefined) throw new ModelFault(name, '', 'missing');
    const schema: z.ZodType = RAW_FILES[name];
    const read = schema.safeParse(files[name]);
    if (!read.success) {
      const issue = read.error.issues[0];
      throw new ModelFault(name, (issue?.path ?? []).map(String).join('.'), issue?.message ?? 'cannot be read');
    }
    raw[name] = read.data;
  }
  return raw as RawModel;
}

function indexOf(file: string, list: readonly { readonly id: string }[], what: string): Map<string, number> {
  const index = new Map<string, number>();
  list.forEach((each, at) => {
    if (index.has(each.id)) throw new ModelFault(file, `${what}[${at}].id`, `${each.id} is there twice`);
    index.set(each.id, at);
  });
  return index;
}

function assemble(raw: RawModel): ModelData {
  const { faults, profiles } = raw['faults.json'];
  const faultIndex = indexOf('faults.json', faults, 'faults');
  const stepIndex = indexOf('steps.json', raw['steps.json'].steps, 'steps');
  indexOf('symptoms.json', raw['symptoms.json'].symptoms, 'symptoms');
  indexOf('told.json', raw['told.json'].evidence, 'evidence');
  indexOf('told.json', raw['told.json'].often, 'often');
  indexOf('assembly.json', raw['assembly.json'].states, 'states');
  indexOf('values.json', raw['values.json'].parts, 'parts');
  indexOf('deeds.json', raw['deeds.json'].work, 'work');
  const said = indexOf('deeds.json', raw['deeds.json'].steps, 'steps');
  const missing = raw['deeds.json'].steps.find(({ id }) => !stepIndex.has(id));
  if (missing) throw new ModelFault('deeds.json', 'steps', `no step ${missing.id}`);
  checkFaultNames(raw, faultIndex);
  const expanded = raw['steps.json'].steps.map((step, at) => expandRows(raw, step, at));
  const steps = raw['steps.json'].steps.map((step, at) => {
    const deeds = raw['deeds.json'].steps[said.get(step.id) ?? -1]?.deeds;
    if (!deeds) throw new ModelFault('deeds.json', 'steps', `it is not said what is done in ${step.id}`);
    return { ...toStep(raw, step, at, faultIndex), deeds };
  });
  return {
    version: '1',
    floor: raw['symptoms.json'].floor,
    toldWrong: raw['symptoms.json'].toldWrong,
    seenWrong: raw['symptoms.json'].seenWrong,
    seenAs: raw['symptoms.json'].seenAs,
    nowAndThen: raw['symptoms.json'].nowAndThen,
    confused: raw['symptoms.json'].confused,
    kappa: raw['pairs.json'].kappa,
    kappaSource: raw['pairs.json'].kappaSource,
    symptoms: raw['symptoms.json'].symptoms,
    faults: faults.map(({ profile, ...fault }, at) => {
      const rate = profiles[profile];
      if (!rate) throw new ModelFault('faults.json', `faults[${at}].profile`, `no profile ${profile}`);
      return { ...fault, rate };
    }),
    steps,
    states: statesOf(raw),
    switches: raw['assembly.json'].switches,
    evidence: raw['told.json'].evidence,
    often: raw['told.json'].often,
    added: addedOf(raw),
    hunch: raw['told.json'].hunch.times,
    pairs: raw['pairs.json'].pairs,
    gates: [
      ...raw['dangers.json'].gates.map((gate) => toGate(gate, steps)),
      ...raw['safety.json'].rules.map((rule) => toSafetyGate(rule, steps)),
    ],
    inseparable: raw['faults.json'].inseparable,
    badLoaner: raw['shop.json'].badLoaner as FaultModel['badLoaner'],
    habit: raw['shop.json'].habit,
    bench: raw['bench.json'],
    values: {
      proving: raw['values.json'].proving.minutes,
      ownersTimes: raw['values.json'].owners.times,
      parts: Object.fromEntries(raw['values.json'].parts.map((part) => [part.id, part.minutes])),
    },
    handlings: raw['handlings.json'].handlings,
    work: { known: new Map(raw['deeds.json'].work.map((one) => [one.id, one])), others: raw['deeds.json'].others },
    rows: expanded.map((each) => each.rows),
    listed: expanded.map((each) => each.listed),
    byGroup: expanded.map((each) => each.byGroup),
    nothing: expanded.map((each) => each.nothing),
    ours: expanded.map((each) => each.ours),
    findings: expanded.map((each) => each.findings),
    faultIndex,
    stepIndex,
    faultMask: Int32Array.from(faults, (fault) => maskOf(fault.circuits)),
  };
}

/** How many times likelier each fault is by the kind of part that was added: its own share of that kind against that of all. */
function addedOf({ 'told.json': { added } }: RawModel): FaultModel['added'] {
  added.faults.forEach(({ chance }, at) => {
    for (const [where, one] of [[`added.faults[${at}].chance`, chance] as const, ['added.base', added.base] as const]) {
      const sum = NEW_PARTS.reduce((all, kind) => all + one[kind], 0);
      if (Math.abs(sum - 1) > 1e-9) throw new ModelFault('told.json', where, `chances sum to ${sum}, not to 1`);
    }
  });
  return new Map(
    NEW_PARTS.map((kind) => [
      kind,
      Object.fromEntries(
        added.faults.flatMap(({ faults, chance }) =>
          faults.map((id) => [id, chance[kind] / added.base[kind]] as const),
        ),
      ),
    ]),
  );
}

/** A gate on all starts spares those that open it: what is dried is switched on to see whether it is dry. */
function toGate(
  { after = [], whileIn = [], ...gate }: RawModel['dangers.json']['gates'][number],
  steps: readonly Step[],
): Gate {
  const opens = gate.until.flat().map((one) => one.step);
  const starts = steps.filter((step) => step.starts && !opens.includes(step.id)).map((step) => step.id);
  return { ...gate, after, whileIn, holds: gate.holds === 'starts' ? starts : gate.holds, safety: null };
}

/** A rule of safety as a gate: it names no steps, and spares those that open it. */
function toSafetyGate(raw: RawModel['safety.json']['rules'][number], steps: readonly Step[]): Gate {
  const { deeds, spares = [], told = [], alsoTold = [], facts = [], found = [], liftedBy = [], suspectIn = [] } = raw;
  const { after = [], whileIn = [], when = null, id, harm, source } = raw;
  const came = (list: readonly RawCame[]) => list.map((one) => cameOf(one, steps));
  const until = raw.until.map(came);
  const open = [...spares, ...[...until.flat(), ...came(liftedBy)].map(({ step }) => step)];
  const can = (step: Step) => !open.includes(step.id) && deedsEver(step).some((deed) => deeds.includes(deed));
  return {
    ...{ id, harm, source, after: came(after), whileIn, when, holds: [], unless: [], sparesRunning: false, until },
    safety: {
      ...{ deeds, spares: open, told, alsoTold, facts, found: came(found), liftedBy: came(liftedBy), suspectIn },
      steps: new Set(steps.filter(can).map((step) => step.id)),
    },
  };
}

type RawCame = { readonly step: string; readonly outcomes?: readonly string[] | undefined };

/** Without outcomes: whatever came of the step. That there is such a step is looked at with the model. */
const cameOf = ({ step, outcomes }: RawCame, steps: readonly Step[]): Came => ({
  step,
  outcomes: outcomes ?? steps.find((one) => one.id === step)?.outcomes.map(({ id }) => id) ?? [],
});

/** The assembly states with what opening each does, in their own order. */
function statesOf(raw: RawModel): ModelData['states'] {
  const { states } = raw['assembly.json'];
  const said = raw['deeds.json'].states;
  const missing = Object.keys(said).find((id) => !states.some((state) => state.id === id));
  if (missing !== undefined) throw new ModelFault('deeds.json', 'states', `no state ${missing}`);
  return states.map((state) => {
    const deed = Object.hasOwn(said, state.id) ? said[state.id] : undefined;
    if (deed === undefined)
      throw new ModelFault('deeds.json', 'states', `it is not said what opening ${state.id} does`);
    return { ...state, deed };
  });
}

/** What mends and what harms name faults that are there; the steps only take over from these lists. */
function checkFaultNames(raw: RawModel, faultIndex: ReadonlyMap<string, number>): void {
  for (const [handling, mends] of Object.entries(raw['handlings.json'].handlings)) {
    const missing = Object.keys(mends).find((fault) => !faultIndex.has(fault));
    if (missing !== undefined) throw new ModelFault('handlings.json', `handlings.${handling}`, `no fault ${missing}`);
  }
  const steps = new Set(raw['steps.json'].steps.map((step) => step.id));
  raw['dangers.json'].harm.forEach((harm, at) => {
    if (!faultIndex.has(harm.fault))
      throw new ModelFault('dangers.json', `harm[${at}].fault`, `no fault ${harm.fault}`);
    if ((harm.whose === 'owner') !== (harm.steps !== undefined))
      throw new ModelFault(
        'dangers.json',
        `harm[${at}].steps`,
        'harm to the owner’s own alone, and only that, says by which steps',
      );
    const missing = harm.steps?.find((id) => !steps.has(id));
    if (missing !== undefined) throw new ModelFault('dangers.json', `harm[${at}].steps`, `no step ${missing}`);
    if (harm.whose !== undefined && circuitOf(harm.part) === undefined)
      throw new ModelFault('dangers.json', `harm[${at}].part`, `a ${harm.part} of the owner’s is in no circuit`);
  });
}

function toStep(
  raw: RawModel,
  step: RawStep,
  at: number,
  faultIndex: ReadonlyMap<string, number>,
): Omit<Step, 'deeds'> {
  const where = `steps[${at}] ${step.id}`;
  const normal = step.outcomes.findIndex((outcome) => outcome.id === step.normal);
  if (normal < 0) throw new ModelFault('steps.json', `${where}.normal`, `no outcome ${step.normal}`);
  const {
    tells: _tells,
    others: _others,
    nothing: _nothing,
    byGroup: _byGroup,
    normal: _normal,
    handling,
    ...rest
  } = step;
  const { intoSlotOf, intoRig, orders, sends, ...hands } = handling;
  const borrowed = new Set([handling.borrows, ...handling.alsoBorrows, orders]);
  const starts = startsAnything(step);
  return {
    ...rest,
    normal,
    outcomes: step.outcomes.map((outcome, n) => toOutcome(outcome, `${where}.outcomes[${n}]`, faultIndex)),
    mends: mendsOf(raw, [...step.does, ...step.alsoDoes], where),
    mendsAfter: mendsOf(raw, step.putBackDoes, where),
    starts,
    handling: {
      ...hands,
      ...(intoSlotOf ? { intoSlotOf } : {}),
      ...(intoRig ? { intoRig } : {}),
      ...(orders ? { orders } : {}),
      ...(sends ? { sends } : {}),
    },
    harm: harmOfStep(raw, step, { borrowed, starts }),
  };
}

/** A trial starts the machine, or the second rig with the owner's part in it; a tester or a dock starts nothing. */
export function startsAnything(step: RawStep): boolean {
  if (step.onRig) return step.handling.borrows === 'rig';
  return step.starts === true || step.exposure !== null || step.life !== 'none';
}

function toOutcome(raw: RawStep['outcomes'][number], where: string, faultIndex: ReadonlyMap<string, number>): Outcome {
  const missing = raw.of?.find((fault) => !faultIndex.has(fault));
  if (missing !== undefined) throw new ModelFault('steps.json', `${where}.of`, `no fault ${missing}`);
  if ((raw.means === 'evidence') !== (raw.of !== undefined))
    throw new ModelFault('steps.json', where, 'evidence, and only evidence, says of which faults');
  const strange = raw.whileQuiet.find((fault) => !faultIndex.has(fault));
  if (strange !== undefined) throw new ModelFault('steps.json', `${where}.whileQuiet`, `no fault ${strange}`);
  if ((raw.means === 'separates') !== (raw.by !== undefined))
    throw new ModelFault('steps.json', where, 'what separates, and only that, says by what it was mended');
  const { id, life, whileQuiet, gives } = raw;
  return { id, meaning: meaningOf(raw), whileQuiet, gives, ...(life ? { life } : {}) };
}

function meaningOf({ means, of = [], by = 'reseating' }: RawStep['outcomes'][number]): OutcomeMeaning {
  switch (means) {
    case 'evidence':
      return { means, of };
    case 'separates':
      return { means, by };
    default:
      return { means };
  }
}

/** Chance that at least one of several handlings mends a fault. */
function mendsOf(raw: RawModel, handlings: readonly string[], where: string): { readonly [fault: string]: number } {
  const mends: { [fault: string]: number } = {};
  for (const id of new Set(handlings)) {
    const handling = raw['handlings.json'].handlings[id];
    if (!handling) throw new ModelFault('steps.json', where, `no handling ${id}`);
    for (const [fault, chance] of Object.entries(handling)) mends[fault] = 1 - (1 - (mends[fault] ?? 0)) * (1 - chance);
  }
  return mends;
}
