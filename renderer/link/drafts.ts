import type { DraftStore } from '../kit/fields/draft.ts';
import { service } from './service.ts';

/** Drafts are kept by the service, sealed: nothing personal lies in the window's own storage. */
export const drafts: DraftStore = {
  save: async (key, text) => void (await service.saveDraft({ key, text })),
  drop: async (key) => void (await service.saveDraft({ key, text: null })),
  load: (key) => service.loadDraft({ key }),
};
