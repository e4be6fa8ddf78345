/** Longest side that is searched for a code: a tag held to a camera is larger than that needs, and larger ones are slow. */
const LONGEST = 800;

type Source = CanvasImageSource & { readonly width: number; readonly height: number };

/** The text of the QR code (ISO/IEC 18004) in a picture or a frame of a film; null when none can be read in it. */
export async function readPicture(
  source: Source,
  width = source.width,
  height = source.height,
): Promise<string | null> {
  if (width === 0 || height === 0) return null;
  const { decodeQR } = await import('qr/decode.js');
  const scale = Math.min(1, LONGEST / Math.max(width, height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(width * scale);
  canvas.height = Math.round(height * scale);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (!context) return null;
  context.drawImage(source, 0, 0, canvas.width, canvas.height);
  const { data } = context.getImageData(0, 0, canvas.width, canvas.height);
  try {
    return decodeQR({ width: canvas.width, height: canvas.height, data: new Uint8Array(data.buffer) });
  } catch {
    // The library throws where it finds no code: the usual case while a hand is still aiming.
    return null;
  }
}
