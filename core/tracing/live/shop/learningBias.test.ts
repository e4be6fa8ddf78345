import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { prng } from '../../../figures/prng.ts';
import { standardModel } from '../loading/standardModel.ts';
import { type ClosedTracing, tallyJobs } from './closedTracing.ts';
import { learnPriors } from './learnPriors.ts';

it('leaning away from what is hard to prove is as large as DEVELOPERS.md says', () => {
  // A known mix: of 2,000 dark machines 60 % have a dead supply, 40 % a board without standby; half of these get proved.
  const chance = prng(5);
  const model = standardModel();
  const jobs = Array.from({ length: 2000 }, (): ClosedTracing => {
    const isSupply = chance.next() < 0.6;
    const isProved = isSupply || chance.next() < 0.5;
    const fault = isSupply ? 'psu-dead' : 'board-standby';
    return { groups: ['no-reaction'], fault, ended: isProved ? 'confirmed' : 'named', cameBack: false };
  });
  const share = (of: readonly ClosedTracing[]) =>
    (100 * (learnPriors(model, tallyJobs(model, of)).moved.find((one) => one.fault === 'psu-dead')?.now ?? 0)).toFixed(
      1,
    );
  const all = share(jobs.map((job) => ({ ...job, ended: 'confirmed' })));
  const left = share(jobs);
  const { named } = tallyJobs(model, jobs).excluded;
  const told = readFileSync(new URL('../../../../DEVELOPERS.md', import.meta.url), 'utf8').replace(/\s+/g, ' ');
  expect(told).toContain(`${named} named only, learning says ${left} % instead of ${all} %`);
});
