import { useState } from 'react';
import { wordsOfError } from '../../link/refusalWords.ts';
import { saveFile } from '../../link/saveFile.ts';
import { service } from '../../link/service.ts';

type TagsAsked = Parameters<typeof service.printTags>[0];

/** Makes tags as a file to be printed; why it could not, in words. */
export function useTagFile() {
  const [failed, setFailed] = useState<ReturnType<typeof wordsOfError> | null>(null);
  const print = async (asked: TagsAsked) => {
    try {
      saveFile(await service.printTags(asked), 'tags.pdf');
      setFailed(null);
    } catch (error) {
      setFailed(wordsOfError(error));
    }
  };
  return { print, failed };
}
