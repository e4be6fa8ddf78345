import type { OutcomeId } from './ids.ts';

/**
 * An outcome of every step, whatever its own are: it could not be done, or does not apply here. It tells nothing, opens
 * no gate and spends no handling; the step counts as done and is not offered again. Why is said beside it.
 */
export const COULD_NOT: OutcomeId = 'could-not';
