import { licensePlugin } from 'rolldown-license-plugin';
import { z } from 'zod';

/** Packages of which code stands in one bundle. */
export const zBundled = z.array(z.object({ name: z.string(), version: z.string() }));

/** The file that a bundle's packages are noted in, beside the bundle. */
export const noteOf = (part: string): string => `bundled-${part}.json`;

/**
 * Notes beside a bundle of which packages code stands in it: what the bundler took, not what a list says it should.
 * @public Called by what configures the bundlers, which is no part of the app.
 */
export const noteBundled = (part: string) =>
  licensePlugin({
    done: (packages, context) => {
      const noted = packages.map(({ name, version }) => ({ name, version }));
      context.emitFile({ type: 'asset', fileName: noteOf(part), source: JSON.stringify(noted) });
    },
  });
