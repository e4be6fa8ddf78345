import counter from '../../../assets/words/en/counter.json';
import { differing, type FieldPath } from '../../../core/commands/kernel/differing.ts';
import type { IdOf } from '../../catalogue.ts';

export type ChangedField = IdOf<'counter.content-changed.fields'>;

const isNamed = (field: string): field is ChangedField => Object.hasOwn(counter['content-changed'].fields, field);

/** The innermost field on the way to a value that has words; `other` where none has. */
export const namedField = (path: FieldPath): ChangedField => path.findLast(isNamed) ?? 'other';

/** What was said otherwise before a command was signed than it is now, each by a name that has words. */
export const changedFields = (before: unknown, now: unknown): readonly ChangedField[] => [
  ...new Set(differing(before, now).map(namedField)),
];
