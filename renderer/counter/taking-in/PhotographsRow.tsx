import { type DragEvent, useState } from 'react';
import type { RefusalWords } from '../../../core/text/wordsFor.ts';
import { FileKey } from '../../kit/fields/FileKey.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { wordsOfError } from '../../link/refusalWords.ts';
import { service } from '../../link/service.ts';
import { Photograph } from '../fields/Photograph.tsx';
import { plainPicture } from '../fields/plainPicture.ts';
import { Row } from './Row.tsx';
import { useTakingIn } from './sheetContext.tsx';

/** Photographs while the owner stands there: front and back first, then as they come; counted on the receipt they sign. */
export function PhotographsRow() {
  const { t } = useWords();
  const { sheet, write } = useTakingIn();
  const [refused, setRefused] = useState<RefusalWords | null>(null);
  const { photographs } = sheet;
  const nameOf = (n: number) => (n === 0 ? t('counter.photo.front') : n === 1 ? t('counter.photo.back') : `${n + 1}`);
  const add = async (files: readonly File[]) => {
    setRefused(null);
    let taken = photographs;
    for (const file of files) {
      try {
        const held = await service.holdPhotograph({ file: await plainPicture(file) });
        taken = [...taken.filter(({ blob }) => blob !== held.blob), { of: nameOf(taken.length), blob: held.blob }];
        write({ photographs: taken });
      } catch (error) {
        return setRefused(wordsOfError(error));
      }
    }
  };
  const drop = (event: DragEvent) => {
    event.preventDefault();
    void add([...event.dataTransfer.files]);
  };
  return (
    <Row id="photographs" known={photographs.length > 0}>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: dropping a file here is a shortcut for the key inside */}
      <div className="counter-stack" onDragOver={(event) => event.preventDefault()} onDrop={drop}>
        {photographs.length > 0 && (
          <ul className="counter-photos">
            {photographs.map(({ of, blob }) => (
              <li key={blob}>
                <Photograph blob={blob} of={of} />
                <span className="k-small">{of}</span>
                <Key
                  kind="link"
                  label={t('counter.photo.take-out', { of })}
                  onPress={() => write({ photographs: photographs.filter((one) => one.blob !== blob) })}
                >
                  {t('counter.photo.take-out-short')}
                </Key>
              </li>
            ))}
          </ul>
        )}
        <FileKey label={t('counter.photo.add')} accept="image/*" several onFiles={(files) => void add(files)} />
        <p className="k-muted k-small">{t('counter.photo.drop')}</p>
        {refused && <Problem slim {...refused} />}
      </div>
    </Row>
  );
}
