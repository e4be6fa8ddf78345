import { MINUTE_MS } from '../../core/time.ts';

const KEPT_MS = MINUTE_MS;

/** Hands a file that the service made to whoever sits here, under this name: a download, as the window shows them. */
export function saveFile(file: Blob, name: string): void {
  const url = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), KEPT_MS);
}
