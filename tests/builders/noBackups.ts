import type { RouterNeeds } from '../../electron/service/router.ts';

/** For doors at which nobody asks for a backup: asked for one, they fail the test. */
export const noBackups: RouterNeeds['backups'] = {
  sheet: () => {
    throw new Error('No backups here');
  },
  set: () => {
    throw new Error('No backups here');
  },
  run: () => Promise.reject(new Error('No backups here')),
};
