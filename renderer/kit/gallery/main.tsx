import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import kit from '../../../assets/words/en/kit.json' with { type: 'json' };
import '../tokens.css';
import { WordsProvider } from '../words.tsx';
import { PAGES } from './pages.tsx';

/** Dev only: every control on pages of invented content, for looking at. `?show=bench&light=night`. */
const asked = new URLSearchParams(location.search);
const Page = PAGES[asked.get('show') ?? 'keys'] ?? PAGES.keys;
const light = asked.get('light');
if (light !== null) document.documentElement.dataset.light = light;

const root = document.getElementById('root');
if (root === null || Page === undefined) throw new Error('gallery page without a root');
createRoot(root).render(
  <StrictMode>
    <WordsProvider catalogue={{ kit }} locale="en-GB" zone="Europe/London">
      <Page />
    </WordsProvider>
  </StrictMode>,
);
