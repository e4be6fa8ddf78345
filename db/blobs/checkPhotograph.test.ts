import { crc32 } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { JPEG, PNG, WEBP } from '../../tests/builders/shopPictures.ts';
import { checkPhotograph } from './checkPhotograph.ts';

const segment = (marker: number, content: string) => {
  const data = Buffer.from(content, 'latin1');
  return Buffer.concat([Buffer.from([0xff, marker, (data.length + 2) >> 8, (data.length + 2) & 0xff]), data]);
};
/** The picture with a segment right after its beginning, where cameras write theirs. */
const jpegWith = (marker: number, content: string) =>
  Buffer.concat([JPEG.subarray(0, 20), segment(marker, content), JPEG.subarray(20)]);

function pngWith(name: string, content: Buffer, at = 33): Buffer {
  const named = Buffer.concat([Buffer.from(name, 'latin1'), content]);
  const chunk = Buffer.alloc(named.length + 8);
  chunk.writeUInt32BE(content.length, 0);
  named.copy(chunk, 4);
  chunk.writeUInt32BE(crc32(named), named.length + 4);
  return Buffer.concat([PNG.subarray(0, at), chunk, PNG.subarray(at)]);
}

function webpWith(name: string, content: Buffer): Buffer {
  const chunk = Buffer.alloc(8);
  chunk.write(name, 0, 'latin1');
  chunk.writeUInt32LE(content.length, 4);
  const all = Buffer.concat([WEBP, chunk, content, Buffer.alloc(content.length % 2)]);
  all.writeUInt32LE(all.length - 8, 4);
  return all;
}

/** The PNG said to be of another size, its check value set right. */
function pngOfSize(width: number, height: number): Buffer {
  const png = Buffer.from(PNG);
  png.writeUInt32BE(width, 16);
  png.writeUInt32BE(height, 20);
  png.writeUInt32BE(crc32(png.subarray(12, 29)), 29);
  return png;
}

describe('a photograph', () => {
  it.each([
    ['JPEG', JPEG],
    ['PNG', PNG],
    ['WebP', WEBP],
    ['JPEG with a short colour profile', jpegWith(0xe2, `ICC_PROFILE\0\x01\x01${'p'.repeat(500)}`)],
    ['PNG with its colour space', pngWith('sRGB', Buffer.from([0]))],
    ['PNG as wide as allowed', pngOfSize(2048, 2048)],
  ])('is kept when it is a clean %s', (_, bytes) => {
    expect(checkPhotograph(bytes)).toBe(null);
  });

  it.each([
    ['position and device in JPEG (Exif)', jpegWith(0xe1, 'Exif\0\0MM\0*'), 'segment e1'],
    ['XMP in JPEG', jpegWith(0xe1, 'http://ns.adobe.com/xap/1.0/\0<x/>'), 'segment e1'],
    ['editing data in JPEG', jpegWith(0xed, 'Photo'), 'segment ed'],
    ['a comment in JPEG', jpegWith(0xfe, 'hello'), 'segment fe'],
    ['a second picture in JPEG (thumbnail)', jpegWith(0xe0, 'JFXX\0\x10'), 'segment e0'],
    ['a maker’s own segment in JPEG', jpegWith(0xe5, 'anything'), 'segment e5'],
    ['a long colour profile in JPEG', jpegWith(0xe2, `ICC_PROFILE\0\x01\x01${'p'.repeat(9000)}`), 'segment e2'],
    [
      'a comment behind the picture in JPEG',
      Buffer.concat([JPEG.subarray(0, -2), segment(0xfe, 'late'), JPEG.subarray(-2)]),
      'segment fe',
    ],
    ['a whole file behind the end of a JPEG', Buffer.concat([JPEG, PNG]), 'bytes after the end'],
    ['text in PNG', pngWith('tEXt', Buffer.from('Author\0W')), 'tEXt'],
    ['compressed text in PNG', pngWith('zTXt', Buffer.from('A\0\0x')), 'zTXt'],
    ['international text in PNG', pngWith('iTXt', Buffer.from('A\0')), 'iTXt'],
    ['Exif in PNG', pngWith('eXIf', Buffer.from('MM')), 'eXIf'],
    ['the time in PNG', pngWith('tIME', Buffer.alloc(7)), 'tIME'],
    ['text behind the picture in PNG', pngWith('tEXt', Buffer.from('A\0W'), PNG.length - 12), 'tEXt'],
    ['bytes behind the end of a PNG', Buffer.concat([PNG, Buffer.from('51.5,-0.1')]), 'bytes after the end'],
    ['Exif in WebP', webpWith('EXIF', Buffer.from('MM\0*')), 'EXIF'],
    ['XMP in WebP', webpWith('XMP ', Buffer.from('<x/>')), 'XMP'],
    ['an announcement of Exif in WebP', webpWith('VP8X', Buffer.from([8, 0, 0, 0, 7, 0, 0, 5, 0, 0])), 'VP8X'],
    ['bytes behind the end of a WebP', Buffer.concat([WEBP, Buffer.from('more')]), 'bytes after the end'],
  ])('is refused with %s', (_, bytes, what) => {
    expect(checkPhotograph(bytes)).toEqual({ refused: 'photograph-carries-data', what });
  });

  it.each([
    ['a text', Buffer.from('not a picture at all')],
    ['nothing', Buffer.alloc(0)],
    ['a drawing in markup', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>')],
    ['a GIF', Buffer.from('GIF89a\x01\x00\x01\x00\x00\x00\x00;', 'latin1')],
    ['a PNG with a wrong check value', Buffer.concat([PNG.subarray(0, 45), Buffer.from([1]), PNG.subarray(46)])],
    ['a JPEG without a picture', Buffer.from([0xff, 0xd8, 0xff, 0xd9])],
    ['a picture without size', pngOfSize(0, 6)],
  ])('is not %s', (_, bytes) => {
    expect(checkPhotograph(bytes)).toEqual({ refused: 'photograph-not-a-picture' });
  });

  it.each([
    ['JPEG', JPEG],
    ['PNG', PNG],
    ['WebP', WEBP],
  ])('is refused, never accepted and never a hang, when a %s is cut anywhere', (_, whole) => {
    for (let length = 0; length < whole.length; length++) {
      expect(checkPhotograph(whole.subarray(0, length))).toMatchObject({
        refused: expect.stringMatching(/^photograph-/),
      });
    }
  });

  it('is refused when a side is longer than 2,048 px', () => {
    expect(checkPhotograph(pngOfSize(2049, 6))).toEqual({
      refused: 'photograph-too-large',
      width: 2049,
      height: 6,
      most: 2048,
    });
    const canvas = webpWith('VP8X', Buffer.from([0, 0, 0, 0, 0, 16, 0, 5, 0, 0]));
    expect(checkPhotograph(canvas)).toMatchObject({ refused: 'photograph-too-large', width: 4097 });
  });
});
