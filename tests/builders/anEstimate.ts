/** An estimate as it is noted: so many hands-on minutes, as many more or less as twice or half of them. */
export const anEstimate = (p50: number) => ({
  handsOn: { p10: p50 / 2, p50, p90: p50 * 2 },
  price: { p50: 1, p90: 2 },
  withPart: null,
  passesLimit: 0,
  drivers: [],
  seed: 1,
  paths: 1,
  policy: 'ratio',
});
