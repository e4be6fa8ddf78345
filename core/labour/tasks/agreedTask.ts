/** A task that was agreed by name, as the catalogue names it: cleaning as the whole work is another task than cleaning after a repair. */
const AGREED = 'agreed:';

/** The id of a task as one that was agreed by name. */
export const agreedTask = (id: string): string => `${AGREED}${id}`;
/** The id of a task without that it was agreed. */
export const taskIn = (id: string): { readonly id: string; readonly agreed: boolean } =>
  id.startsWith(AGREED) ? { id: id.slice(AGREED.length), agreed: true } : { id, agreed: false };
