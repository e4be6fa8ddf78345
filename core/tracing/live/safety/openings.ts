/** What opening an assembly state can do that rules of safety speak of. Said of each state in the model, or that it is none. */
export const OPENINGS = ['panel-open', 'card-out', 'supply-out', 'board-out', 'cooler-off', 'processor-out'] as const;

export type OpeningDeed = (typeof OPENINGS)[number];
