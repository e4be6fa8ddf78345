import { IntlMessageFormat } from 'intl-messageformat';
import { gapsOf } from '../../core/text/gaps.ts';

/**
 * Names of the gaps of a text, in all its forms, each once and in order.
 * @throws {SyntaxError} for a text that is no message.
 */
export const gapsIn = (text: string): readonly string[] =>
  gapsOf(new IntlMessageFormat(text, 'en', undefined, { ignoreTag: true }))
    .map(({ name }) => name)
    .sort();
