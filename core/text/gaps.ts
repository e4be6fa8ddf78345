import type { IntlMessageFormat } from 'intl-messageformat';

/** A gap of a text; a plural one picks a form by its number. */
export type Gap = { readonly name: string; readonly plural: boolean };

type Element = ReturnType<IntlMessageFormat['getAst']>[number];

/** The gaps of a text in all its forms, each once. */
export function gapsOf(message: IntlMessageFormat): readonly Gap[] {
  const found = new Map<string, Gap>();
  const visit = (element: Element): void => {
    if ('options' in element) {
      found.set(element.value, { name: element.value, plural: 'offset' in element });
      for (const form of Object.values(element.options)) form.value.forEach(visit);
    } else if ('value' in element && element.type !== LITERAL && !found.has(element.value))
      found.set(element.value, { name: element.value, plural: false });
  };
  message.getAst().forEach(visit);
  return [...found.values()];
}

/** The parser's number for plain text between gaps. */
const LITERAL = 0;
