import type { ComponentType } from 'react';
import { BenchPage } from './BenchPage.tsx';
import { KeysPage } from './KeysPage.tsx';
import { LinePage } from './LinePage.tsx';
import { MarksPage } from './MarksPage.tsx';
import { PapersPage } from './PapersPage.tsx';
import { ReckoningPage } from './ReckoningPage.tsx';
import { RulesPage } from './RulesPage.tsx';
import { WallPage } from './WallPage.tsx';

/** Gallery pages by their name in the address. */
export const PAGES: { readonly [name: string]: ComponentType } = {
  keys: KeysPage,
  bench: BenchPage,
  line: LinePage,
  wall: WallPage,
  marks: MarksPage,
  rules: RulesPage,
  papers: PapersPage,
  reckoning: ReckoningPage,
};
