import { IntlMessageFormat } from 'intl-messageformat';

type Element = ReturnType<IntlMessageFormat['getAst']>[number];

/** The parser's number for plain text between gaps. */
const LITERAL = 0;

/**
 * Names of the gaps of a text, in all its forms, each once and in order.
 * @throws {SyntaxError} for a text that is no message.
 */
export function gapsIn(text: string): readonly string[] {
  return [
    ...new Set(new IntlMessageFormat(text, 'en', undefined, { ignoreTag: true }).getAst().flatMap(gapsOf)),
  ].sort();
}

function gapsOf(element: Element): readonly string[] {
  if ('options' in element)
    return [element.value, ...Object.values(element.options).flatMap(({ value }) => value.flatMap(gapsOf))];
  return 'value' in element && element.type !== LITERAL ? [element.value] : [];
}
