import type { LoggedOutcomes } from './nextStep.ts';
import { asFields, asId, asList, BadField, type BadFile, get } from './problem/fileReader.ts';

/**
 * Reads what was done so far: a list of `{ "step", "outcome" }`. Refusals carry `file` and `field` (as `[2].outcome`):
 * `not-json`, `not-a-list`, `not-an-object`, `missing`, `not-an-id`.
 * @throws whatever is no `BadField`: a defect of the reader.
 */
export function parseLog(
  json: string,
  fileName: string,
): { readonly ok: true; readonly log: LoggedOutcomes } | { readonly ok: false; readonly refusal: BadFile } {
  try {
    return { ok: true, log: readLog(json) };
  } catch (error) {
    if (!(error instanceof BadField)) throw error;
    return { ok: false, refusal: { ...error.facts, refused: error.refused, file: fileName, field: error.field } };
  }
}

function readLog(json: string): LoggedOutcomes {
  let value: unknown;
  try {
    value = JSON.parse(json);
  } catch (error) {
    throw new BadField('not-json', '(file)', { reason: error instanceof Error ? error.message : String(error) });
  }
  return asList(value, '(file)').map((each, at) => {
    const fields = asFields(each, `[${at}]`);
    return {
      step: asId(get(fields, 'step'), `[${at}].step`),
      outcome: asId(get(fields, 'outcome'), `[${at}].outcome`),
    };
  });
}
