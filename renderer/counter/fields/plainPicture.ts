/** The longest side that is kept, px. */
const LONGEST_SIDE = 2048;
const QUALITY = 0.85;

/**
 * The picture alone, drawn anew: no position, device, text or thumbnail of the camera's, and no side too long. A file
 * that is no picture comes back as it is; what keeps it says so in words.
 */
export async function plainPicture(file: File): Promise<File> {
  try {
    const picture = await createImageBitmap(file);
    const shrink = Math.min(1, LONGEST_SIDE / Math.max(picture.width, picture.height));
    const canvas = document.createElement('canvas');
    canvas.width = Math.max(1, Math.round(picture.width * shrink));
    canvas.height = Math.max(1, Math.round(picture.height * shrink));
    canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
    picture.close();
    const drawn = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', QUALITY));
    return drawn ? new File([drawn], 'photograph.jpg', { type: 'image/jpeg' }) : file;
  } catch {
    return file;
  }
}
