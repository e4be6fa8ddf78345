/** Licences, by their SPDX names, that let a package be bundled with the app and handed on with a notice. */
export const MAY_SHIP: ReadonlySet<string> = new Set([
  'MIT',
  'ISC',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'Apache-2.0',
  '0BSD',
  'BlueOak-1.0.0',
  'OFL-1.1',
  'MIT OR Apache-2.0',
  '(MIT OR Apache-2.0)',
  '(MIT OR CC0-1.0)',
]);

/**
 * Licences of tools that work on the code and are not handed on. MPL-2.0: changes to their own files would have to be
 * shown. CC0-1.0: given to everybody; it gives no patent licence, so that nothing under it is built in unseen.
 */
export const MAY_HELP: ReadonlySet<string> = new Set(['MPL-2.0', 'CC0-1.0']);
