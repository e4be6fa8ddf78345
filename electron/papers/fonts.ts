import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

/** The two cuts of the papers' face (Source Serif 4, OFL-1.1), as TrueType bytes. */
export type PaperFonts = { readonly regular: Buffer; readonly semibold: Buffer };

/** Reads the face from its package. The package stays outside the bundle, so it is found beside the app. */
export function loadPaperFonts(): PaperFonts {
  const require = createRequire(import.meta.url);
  const read = (cut: string) => readFileSync(require.resolve(`source-serif/TTF/SourceSerif4-${cut}.ttf`));
  return { regular: read('Regular'), semibold: read('Semibold') };
}
