import { startsAnything } from '../loading/loadFaultModel.ts';
import { RAW_FILES } from '../loading/raw.ts';
import { STANDARD_MODEL_FILES } from '../loading/standardModel.ts';
import { cautiousDeeds, plainDeeds } from '../safety/plainDeeds.ts';
import type { ModelFiles } from './modelFiles.ts';

/**
 * A shop's own files with every step's deeds said: where it says nothing of a step, as delivered for one of that name, else
 * all that its fields give away and the worst that may go along with it; and never less than its fields give away. Files
 * that cannot be read stay as they are: loading them says what is wrong. Of an assembly state it says what is delivered for
 * one of that name; of a state of the shop's own nobody can say it but the shop.
 */
export function withDeeds(files: ModelFiles): ModelFiles {
  const steps = RAW_FILES['steps.json'].safeParse(files['steps.json']);
  const delivered = RAW_FILES['deeds.json'].parse(STANDARD_MODEL_FILES['deeds.json']);
  const own = RAW_FILES['deeds.json'].safeParse(files['deeds.json'] ?? delivered);
  const assembly = RAW_FILES['assembly.json'].safeParse(files['assembly.json']);
  if (!steps.success || !own.success || !assembly.success) return files;
  const known = assembly.data.states.map(({ id }) => id);
  const states = Object.fromEntries(Object.entries(delivered.states).filter(([id]) => known.includes(id)));
  const said = new Map([...delivered.steps, ...own.data.steps].map(({ id, deeds }) => [id, deeds]));
  const whole = steps.data.steps.map((step) => {
    const { intoSlotOf: _, intoRig, orders, sends, ...hands } = step.handling;
    const handling = { ...hands, ...(intoRig && { intoRig }), ...(orders && { orders }), ...(sends && { sends }) };
    const told = { ...step, handling, starts: startsAnything(step) };
    return { id: step.id, deeds: [...new Set([...(said.get(step.id) ?? cautiousDeeds(told)), ...plainDeeds(told)])] };
  });
  return { ...files, 'deeds.json': { ...own.data, states: { ...states, ...own.data.states }, steps: whole } };
}
