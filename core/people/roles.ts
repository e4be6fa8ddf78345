/** What somebody does in the shop; one person may have several. */
export const ROLES = ['desk', 'bench', 'keeper'] as const;
export type Role = (typeof ROLES)[number];
