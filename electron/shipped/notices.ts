import type { ShippedPackage } from './shippedPackages.ts';

const LINE = '-'.repeat(78);

/** The notices as one text: each package with its licence, and each licence's own text. */
export const noticesText = (packages: readonly ShippedPackage[]): string =>
  packages
    .map(({ name, version, licence, text }) => `${LINE}\n${name} ${version}\n${licence}\n\n${text}`.trim())
    .join('\n\n')
    .concat('\n');

/** The same for the screens. */
export const noticesOnScreen = (packages: readonly ShippedPackage[]) =>
  packages.map(({ name, version, licence, text }) => ({ name, version, licence, text }));
