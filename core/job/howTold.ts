/** By what way the owner was told of something. */
export const HOW_TOLD = ['counter', 'phone', 'mail', 'message'] as const;
export type HowTold = (typeof HOW_TOLD)[number];
