/** Rates in percent as one line, `10; 5.5`. */
export const ratesText = (permille: readonly number[]): string => permille.map((one) => String(one / 10)).join('; ');

/** Thousandths from a line of percentages between semicolons, a decimal comma allowed; null when one is no rate. */
export function permilles(text: string): readonly number[] | null {
  const rates = text
    .split(';')
    .map((one) => one.trim().replace(',', '.'))
    .filter((one) => one !== '')
    .map((one) => (/^\d{1,3}(\.\d{1,3})?$/.test(one) ? Math.round(Number(one) * 1000) / 100 : Number.NaN));
  return rates.every((one) => one <= 1000) ? rates : null;
}
