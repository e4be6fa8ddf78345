import type { FaultModel } from '../../live/types.ts';
import type { BadLine } from '../bench/toTracing.ts';
import { type CaseLine, NOT_READ, zCaseLine } from '../form/caseLine.ts';
import type { Answer } from './answer.ts';
import { type AnswerHow, answerLine } from './answerLine.ts';

/** A line that got no answer: what is wrong with it, and where. */
export type ErrorLine = {
  readonly case: string | null;
  readonly error: { readonly is: BadLine['is'] | 'failed'; readonly at: string };
};

/** One line of the protocol, as JSON already read, answered. Nothing is kept between lines. */
export function answerText(model: FaultModel, value: unknown, how: AnswerHow = { ahead: true }): Answer | ErrorLine {
  const id = idOf(value);
  const parsed = zCaseLine.safeParse(value);
  if (!parsed.success)
    return { case: id, error: { is: 'not-a-case', at: parsed.error.issues[0]?.path.join('.') ?? '' } };
  const answer = answered(model, parsed.data, how);
  if ('is' in answer) return { case: id, error: { is: answer.is, at: answer.at } };
  const ignored = [...unknownFields(value), ...(answer.ignored ?? [])];
  return ignored.length > 0 ? { ...answer, ignored } : answer;
}

function answered(model: FaultModel, line: CaseLine, how: AnswerHow): ReturnType<typeof answerLine> | Failed {
  try {
    return answerLine(model, line, how);
  } catch (error) {
    return { is: 'failed', at: error instanceof Error ? error.message : String(error) };
  }
}
type Failed = { readonly is: 'failed'; readonly at: string };

const idOf = (value: unknown): string | null =>
  typeof value === 'object' && value !== null && 'id' in value && typeof value.id === 'string' ? value.id : null;

const READ: readonly string[] = [...Object.keys(zCaseLine.shape), ...NOT_READ];

const unknownFields = (value: unknown): readonly string[] =>
  typeof value === 'object' && value !== null ? Object.keys(value).filter((name) => !READ.includes(name)) : [];
