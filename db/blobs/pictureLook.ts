/** What a picture file says of itself. `carries`: the first thing in it that is no picture; null when there is none. */
export type PictureLook = { readonly width: number; readonly height: number; readonly carries: string | null };

/** A colour profile may be this long, bytes: those that browsers write are; those of cameras and screens name the device. */
export const LONGEST_PROFILE = 4096;

/** Letters from some place in a file. */
export const lettersAt = (bytes: Buffer, at: number, length: number): string =>
  bytes.toString('latin1', at, at + length);
