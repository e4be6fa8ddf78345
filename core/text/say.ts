/** A text with `{name}` places, or one for each plural category of the language. */
export type Template = string | PluralTemplate;
/** `other` always; `one` and the rest where the language has them (CLDR plural categories). */
export type PluralTemplate = { readonly [category: string]: string };
export type Fills = { readonly [place: string]: string | number };

/**
 * Fills the places of a template. A place without a fact is a defect, and thrown: a paper never prints `{name}`.
 * A plural template picks its form by `n`, in the language of `locale`.
 */
export function say(template: Template, fills: Fills = {}, locale = 'en'): string {
  const text = typeof template === 'string' ? template : pluralForm(template, fills, locale);
  return text.replace(/\{([\w-]+)\}/g, (_, place: string) => {
    const fill = fills[place];
    if (fill === undefined) throw new Error(`The text "${text}" was not given its {${place}}.`);
    return String(fill);
  });
}

function pluralForm(forms: PluralTemplate, fills: Fills, locale: string): string {
  const n = Number(fills.n);
  const form = forms[new Intl.PluralRules(locale).select(n)] ?? forms.other;
  if (form === undefined) throw new Error('A plural text needs the form "other".');
  return form;
}
