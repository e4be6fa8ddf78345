import app from '../assets/words/en/app.json';
import bench from '../assets/words/en/bench.json';
import counter from '../assets/words/en/counter.json';
import dayLine from '../assets/words/en/day-line.json';
import fits from '../assets/words/en/fits.json';
import kit from '../assets/words/en/kit.json';
import measured from '../assets/words/en/measured.json';
import reckoning from '../assets/words/en/reckoning.json';
import wall from '../assets/words/en/wall.json';
import type { Catalogue } from './kit/text/words.tsx';

/** Texts of the screens by room. Terms of the trade (symptoms, steps, faults, stages) are in files of their own. */
export const catalogue: Catalogue = { app, bench, counter, 'day-line': dayLine, fits, kit, measured, reckoning, wall };
