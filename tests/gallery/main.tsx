import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import de from '../../assets/words/de/kit.json' with { type: 'json' };
import counter from '../../assets/words/en/counter.json' with { type: 'json' };
import en from '../../assets/words/en/kit.json' with { type: 'json' };
import reckoning from '../../assets/words/en/reckoning.json' with { type: 'json' };
import es from '../../assets/words/es/kit.json' with { type: 'json' };
import fr from '../../assets/words/fr/kit.json' with { type: 'json' };
import '../../renderer/kit/tokens.css';
import { WordsProvider } from '../../renderer/kit/text/words.tsx';
import { PAGES } from './pages.tsx';

/** Dev only: every control on pages of invented content, for looking at. `?show=bench&light=night`. */
const asked = new URLSearchParams(location.search);
const Page = PAGES[asked.get('show') ?? 'keys'] ?? PAGES.keys;
const light = asked.get('light');
if (light !== null) document.documentElement.dataset.light = light;

const CATALOGUES = { en, de, es, fr };
const language = (asked.get('language') ?? 'en') as keyof typeof CATALOGUES;
document.documentElement.lang = language;

const root = document.getElementById('root');
if (root === null || Page === undefined) throw new Error('gallery page without a root');
createRoot(root).render(
  <StrictMode>
    <WordsProvider
      catalogue={{ kit: CATALOGUES[language], counter, reckoning }}
      locale={language === 'en' ? 'en-GB' : language}
      zone="Europe/London"
    >
      <Page />
    </WordsProvider>
  </StrictMode>,
);
