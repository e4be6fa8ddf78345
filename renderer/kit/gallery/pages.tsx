import type { ComponentType } from 'react';
import { BenchPage } from './BenchPage.tsx';
import { KeysPage } from './KeysPage.tsx';

/** Gallery pages by their name in the address. */
export const PAGES: { readonly [name: string]: ComponentType } = {
  keys: KeysPage,
  bench: BenchPage,
};
