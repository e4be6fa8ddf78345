import { useEffect, useRef, useState } from 'react';
import { Ask } from '../keys/Ask.tsx';
import { Key } from '../keys/Key.tsx';
import { useWords } from '../text/words.tsx';
import { readPicture } from './readPicture.ts';
import './CameraReader.css';

const EVERY_MS = 200;

export type CameraReaderProps = {
  /** Whether this is a code of ours: its check character fits. */
  readonly check: (code: string) => boolean;
  readonly onCode: (code: string) => void;
  readonly onClose: () => void;
};

/** Reads a tag with the camera, or from a picture of it. A code with a wrong check character is refused, never guessed. */
export function CameraReader({ check, onCode, onClose }: CameraReaderProps) {
  const { t } = useWords();
  const video = useRef<HTMLVideoElement>(null);
  const [noCamera, setNoCamera] = useState(false);
  const [wrong, setWrong] = useState<string | null>(null);
  const heard = useRef((_: string | null) => {});
  heard.current = (code) => {
    if (code === null) return;
    if (check(code)) onCode(code);
    else setWrong(code);
  };
  useEffect(
    () =>
      watchCamera(
        video,
        (code) => heard.current(code),
        () => setNoCamera(true),
      ),
    [],
  );
  const picture = async (file: File | undefined) => {
    if (!file) return;
    const bitmap = await createImageBitmap(file);
    const code = await readPicture(bitmap);
    bitmap.close();
    if (code === null) setWrong('');
    else heard.current(code);
  };
  return (
    <Ask
      open
      title={t('kit.camera.title')}
      onClose={onClose}
      light
      keys={<Key onPress={onClose}>{t('kit.camera.close')}</Key>}
    >
      {noCamera ? (
        <p>{t('kit.camera.none')}</p>
      ) : (
        <video ref={video} className="k-camera" muted playsInline autoPlay aria-label={t('kit.camera.sees')} />
      )}
      <p role="status">
        {wrong === null
          ? t('kit.camera.hold')
          : t(wrong === '' ? 'kit.camera.nothing' : 'kit.camera.wrong', { code: wrong })}
      </p>
      <label className="k-camera-file">
        <span>{t('kit.camera.picture')}</span>
        <input type="file" accept="image/*" onChange={(event) => void picture(event.target.files?.[0])} />
      </label>
    </Ask>
  );
}

/** Looks at the camera's picture a few times a second until told to stop; the camera is let go then. */
function watchCamera(
  video: { readonly current: HTMLVideoElement | null },
  onCode: (code: string | null) => void,
  onNone: () => void,
): () => void {
  let over = false;
  let stream: MediaStream | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const look = async () => {
    const { current } = video;
    if (over) return;
    if (current && current.readyState >= current.HAVE_CURRENT_DATA) {
      const code = await readPicture(current, current.videoWidth, current.videoHeight);
      if (!over) onCode(code);
    }
    timer = setTimeout(() => void look(), EVERY_MS);
  };
  const start = async () => {
    try {
      const taken = await navigator.mediaDevices.getUserMedia({ video: { facingMode: 'environment' } });
      stream = taken;
      if (over) return stop();
      if (video.current) video.current.srcObject = taken;
      void look();
    } catch {
      // No camera, or it may not be used: a picture can still be read.
      if (!over) onNone();
    }
  };
  const stop = () => {
    over = true;
    clearTimeout(timer);
    for (const track of stream?.getTracks() ?? []) track.stop();
  };
  void start();
  return stop;
}
