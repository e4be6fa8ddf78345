import { useRef } from 'react';
import { Key } from '../keys/Key.tsx';

/** A key that opens the file chooser; the input itself is reached by its label. */
export function FileKey({
  label,
  accept,
  onFiles,
  several = false,
}: {
  readonly label: string;
  readonly accept: string;
  readonly onFiles: (files: readonly File[]) => void;
  readonly several?: boolean;
}) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <Key onPress={() => input.current?.click()}>{label}</Key>
      <input
        ref={input}
        type="file"
        className="k-heard"
        aria-label={label}
        tabIndex={-1}
        accept={accept}
        multiple={several}
        onChange={(event) => {
          onFiles([...(event.target.files ?? [])]);
          event.target.value = '';
        }}
      />
    </>
  );
}
