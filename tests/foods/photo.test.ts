import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { crc32 as zlibCrc32, deflateSync } from 'node:zlib';
import fc from 'fast-check';
import QRCode from 'qrcode';
import { describe, expect, test } from 'vitest';
import { readPhoto, type Photo } from '#lib/foods/photo';
import { bytesOf, joined, lettersAt, viewOf } from '#lib/foods/photo-bytes';
import { LARGEST_PHOTO, photoSizeText } from '#lib/foods/photo-kinds';
import { photoName, shownAs } from '#lib/foods/photo-name';
import { orientationNotes, readOrientation } from '#lib/foods/photo-orientation';
import { crc32 } from '#lib/foods/photo-png';

const FOLDER = fileURLToPath(new URL('./photos/', import.meta.url));
const NAMES = readdirSync(FOLDER).filter((name) => !name.endsWith('.md'));
const file = (name: string) => new Uint8Array(readFileSync(FOLDER + name));
const KIND: Readonly<Record<string, string>> = { jpg: 'jpeg', png: 'png', webp: 'webp' };
const kindOf = (name: string) => KIND[name.split('.').at(-1) ?? ''];

function read(bytes: Uint8Array): Photo {
  const photo = readPhoto(bytes);
  if (!photo.ok) throw new Error(JSON.stringify(photo.problems));
  return photo.value;
}

/** The code of a refusal; 'taken' where there is none. */
function refusal(bytes: Uint8Array): string {
  const photo = readPhoto(bytes);
  return photo.ok ? 'taken' : (photo.problems[0]?.code ?? '');
}

const message = (bytes: Uint8Array) => {
  const photo = readPhoto(bytes);
  return photo.ok ? '' : (photo.problems[0]?.message ?? '');
};

const text = (bytes: Uint8Array) => Buffer.from(bytes).toString('latin1');

/** A file without some bytes, with others in their place. */
const spliced = (bytes: Uint8Array, at: number, without: number, put: Uint8Array) =>
  joined([bytes.subarray(0, at), put, bytes.subarray(at + without)]);

const jpegSegment = (marker: number, content: Uint8Array) =>
  joined([
    Uint8Array.of(0xff, marker, (content.length + 2) >> 8, (content.length + 2) & 0xff),
    content,
  ]);

/** A chunk with the checksum of zlib, which knows nothing of ours. */
function pngChunk(name: string, content: Uint8Array): Uint8Array {
  const named = joined([bytesOf(name), content]);
  const ends = new Uint8Array(8);
  viewOf(ends).setUint32(0, content.length);
  viewOf(ends).setUint32(4, zlibCrc32(named));
  return joined([ends.subarray(0, 4), named, ends.subarray(4)]);
}

function png(width: number, height: number, colour = 0): Uint8Array {
  const head = new Uint8Array(13);
  viewOf(head).setUint32(0, width);
  viewOf(head).setUint32(4, height);
  head.set([8, colour, 0, 0, 0], 8);
  const data = deflateSync(Buffer.alloc(64));
  return joined([
    bytesOf('\x89PNG\r\n\x1a\n'),
    pngChunk('IHDR', head),
    pngChunk('IDAT', data),
    pngChunk('IEND', new Uint8Array()),
  ]);
}

describe('pictures written by a library', () => {
  test.each(NAMES)('%s is known by its bytes, measured, and reads the same again', (name) => {
    const photo = read(file(name));
    expect(photo).toMatchObject({ kind: kindOf(name), width: 48, height: 32 });
    expect(read(photo.bytes)).toEqual(photo);
  });

  test.each(NAMES.filter((name) => !name.startsWith('noted')))(
    '%s holds nothing but its picture and stays as it is, byte for byte',
    (name) => expect(read(file(name)).bytes).toEqual(file(name)),
  );

  test.each(NAMES)('%s is refused wherever it is cut short', (name) => {
    const bytes = file(name);
    for (let length = 0; length < bytes.length; length++) {
      expect(refusal(bytes.subarray(0, length)), `${length}`).not.toBe('taken');
    }
    expect(message(bytes.subarray(0, -1))).toContain('cut short');
  });

  test.each(NAMES)('%s with something in front or behind is refused', (name) => {
    const script = bytesOf('<html><script>alert(1)</script></html>');
    expect(refusal(joined([script, file(name)]))).toMatch(/^(?:more-before|kind)$/);
    expect(refusal(joined([bytesOf('\n'), file(name)]))).toMatch(/^(?:more-before|kind)$/);
    expect(refusal(joined([file(name), script]))).toBe('more-behind');
    expect(refusal(joined([file(name), bytesOf('PK\x03\x04')]))).toBe('more-behind');
  });

  test('a PNG of another library is taken', async () => {
    const photo = read(new Uint8Array(await QRCode.toBuffer('panel', { width: 90 })));
    expect(photo).toMatchObject({ kind: 'png', width: 90, height: 90 });
  });

  test.each(['noted-turned.png', 'palette.png'])(
    '%s is refused with any one bit turned',
    (name) => {
      const bytes = file(name);
      for (let at = 0; at < bytes.length; at++) {
        const wrong = bytes.slice();
        wrong[at] = (wrong[at] ?? 0) ^ (1 << (at % 8));
        expect(refusal(wrong), `${at}`).not.toBe('taken');
      }
    },
  );
});

describe('what a camera writes beside the picture', () => {
  const NOTED = NAMES.filter((name) => name.startsWith('noted'));

  test.each(NOTED)('%s keeps its way up and its colours, and no place, time or maker', (name) => {
    const [before, after] = [text(file(name)), text(read(file(name)).bytes)];
    expect(NOTED).toHaveLength(3);
    // The place: 32.30 seconds north, as two numbers of four bytes, in the order that libvips writes.
    const seconds = Uint8Array.of(0x9e, 0x0c, 0, 0, 0x64, 0, 0, 0);
    for (const told of ['Invented Camera', 'taken at home', 'nobody', text(seconds)]) {
      expect(before).toContain(told);
      expect(after).not.toContain(told);
    }
    expect(after).not.toMatch(/xmpmeta|XML:com\.adobe|xap|zTXt|tEXt|iTXt/);
    expect(after).toMatch(/ICC_PROFILE|iCCP|ICCP/);
    // Tag 0x0112, of kind 3, one value: 6 (Exif 2.32, 4.6.4).
    expect(after).toContain('\x01\x12\0\x03\0\0\0\x01\0\x06');
  });

  test('the coded picture itself is the same, byte for byte', () => {
    const picture = (bytes: Uint8Array) => text(bytes).split('\xff\xda')[1];
    const noted = file('noted-turned.jpg');
    expect(picture(read(noted).bytes)).toBe(picture(noted));
  });

  test('a remark, a small picture and what no browser needs are left out of a JPEG', () => {
    const plain = file('plain.jpg');
    const bare = text(read(plain).bytes);
    const script = bytesOf('<script>alert(1)</script>');
    for (const marker of [0xfe, 0xed, 0xe2, 0xe1, 0xec, 0xef]) {
      expect(text(read(spliced(plain, 2, 0, jpegSegment(marker, script))).bytes)).toBe(bare);
    }
    const jfif = bytesOf('JFIF\0\x01\x02\x01\0\x48\0\x48\x01\x01abc');
    const tagged = text(read(spliced(plain, 2, 0, jpegSegment(0xe0, jfif))).bytes);
    expect(tagged.slice(2, 20)).toBe('\xff\xe0\0\x10JFIF\0\x01\x02\x01\0\x48\0\x48\0\0');
    expect(tagged).not.toContain('abc');
  });

  test('what phones put behind a JPEG goes, and the picture stays', () => {
    const plain = file('plain.jpg');
    const film = bytesOf('\0\0\0\x18ftypmp42\0\0\0\0');
    for (const behind of [file('grey.jpg'), film, bytesOf('\0\0\0'), bytesOf('\0\0abcSEFT')]) {
      expect(read(joined([plain, behind])).bytes).toEqual(plain);
    }
  });

  test('text and time in a PNG are left out, and a moving one stands still', () => {
    const plain = png(8, 8);
    const more = joined([
      pngChunk('tEXt', bytesOf('Comment\0taken at home')),
      pngChunk('tIME', bytesOf('\x07\xea\x0b\x1c\0\0\0')),
      pngChunk('acTL', new Uint8Array(8)),
    ]);
    expect(read(spliced(plain, 33, 0, more)).bytes).toEqual(plain);
    expect(refusal(spliced(plain, 33, 0, pngChunk('HTML', new Uint8Array(8))))).toBe('kind');
  });

  test('the way up is read in both orders of bytes; what cannot be read is upright', () => {
    for (let way = 1; way <= 8; way++) {
      expect(readOrientation(orientationNotes(way))).toBe(way);
      const little = bytesOf(
        `II*\0\x08\0\0\0\x01\0\x12\x01\x03\0\x01\0\0\0${String.fromCharCode(way)}\0\0\0`,
      );
      expect(readOrientation(little)).toBe(way);
      expect(readOrientation(joined([bytesOf('Exif\0\0'), little]))).toBe(way);
    }
    expect(readOrientation(orientationNotes(9))).toBe(1);
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 60 }), fc.nat(25), (bytes, at) => {
        const notes = spliced(orientationNotes(6), at, 1, bytes);
        const way = readOrientation(notes);
        return way >= 1 && way <= 8;
      }),
    );
  });
});

describe('what is refused', () => {
  const CASES: [string, string, RegExp][] = [
    ['\0\0\0\x18ftypheic\0\0\0\0mif1heic', 'heic', /HEIC.*most compatible.*JPEG/],
    ['\0\0\0\x18ftypmif1\0\0\0\0mif1heic', 'heic', /HEIC/],
    ['\0\0\0\x1cftypavif\0\0\0\0avifmif1', 'kind', /AVIF.*JPEG, PNG or WebP/],
    ['\0\0\0\x18ftypmp42\0\0\0\0mp42isom', 'kind', /a film/],
    ['GIF89a', 'kind', /a GIF/],
    ['%PDF-1.7', 'kind', /a PDF/],
    ['II*\0', 'kind', /TIFF/],
    ['<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"/>', 'kind', /text, a drawing/],
    ['\xef\xbb\xbf <!doctype html>', 'kind', /web page/],
    ['#!/bin/sh', 'kind', /text/],
    ['MZ\x90', 'kind', /no picture that is known here/],
    ['\xff\xd8', 'kind', /no picture/],
    ['\xff\xd8\xff', 'cut-short', /cut short/],
    ['RIFF\x04\0\0\0WEBP', 'broken', /WebP is broken/],
    ['RIFF\x04\0\0\0WAVE', 'kind', /no picture/],
    ['', 'empty', /empty/],
  ];
  test.each(CASES)('%j: %s', (letters, code, words) => {
    expect(refusal(bytesOf(letters))).toBe(code);
    expect(message(bytesOf(letters))).toMatch(words);
  });

  test('more than 8 MB, 12,000 pixels a side or 50 million in all; both ends fit', () => {
    expect(read(png(12_000, 4_166))).toMatchObject({ width: 12_000, height: 4_166 });
    expect(refusal(png(12_001, 1))).toBe('too-many-pixels');
    expect(refusal(png(1, 12_001))).toBe('too-many-pixels');
    expect(message(png(12_000, 4_167))).toContain('12000 × 4167 pixels');
    expect(refusal(png(0, 9))).toBe('no-size');
    expect(refusal(new Uint8Array(LARGEST_PHOTO))).toBe('kind');
    expect(message(new Uint8Array(LARGEST_PHOTO + 1))).toContain('8.1 MB; a photo may have 8 MB');
    expect([1, 99_999, 100_000, 2_345_678].map(photoSizeText)).toEqual([
      '1 kB',
      '100 kB',
      '0.1 MB',
      '2.4 MB',
    ]);
  });

  test('a palette that is missing, a moving WebP, two sizes that disagree, a foreign JPEG', () => {
    expect(refusal(png(8, 8, 3))).toBe('broken');
    const webp = file('noted-turned.webp');
    expect(lettersAt(webp, 12, 4)).toBe('VP8X');
    expect(refusal(spliced(webp, 20, 1, Uint8Array.of((webp[20] ?? 0) | 2)))).toBe('moves');
    expect(refusal(spliced(webp, 24, 1, Uint8Array.of(90)))).toBe('broken');
    const jpeg = file('plain.jpg');
    const frame = text(jpeg).indexOf('\xff\xc0');
    // Arithmetic coding, and a height that is said only later (T.81, B.2.5).
    expect(refusal(spliced(jpeg, frame + 1, 1, Uint8Array.of(0xc9)))).toBe('kind');
    expect(refusal(spliced(jpeg, frame + 5, 2, Uint8Array.of(0, 0)))).toBe('no-size');
    // A frame said twice, a picture without one, and without a scan.
    const twice = jpeg.subarray(frame, frame + 19);
    expect(refusal(spliced(jpeg, frame, 0, twice))).toBe('broken');
    expect(refusal(spliced(jpeg, frame, 19, new Uint8Array()))).toBe('broken');
    expect(refusal(bytesOf('\xff\xd8\xff\xd9'))).toBe('broken');
  });

  test('no bytes whatever make the reader fall over or run on', () => {
    const starts = NAMES.map(file);
    fc.assert(
      fc.property(
        fc.constantFrom(...starts),
        fc.array(fc.tuple(fc.nat(), fc.nat(12), fc.uint8Array({ maxLength: 12 })), {
          maxLength: 6,
        }),
        (start, slips) => {
          let bytes: Uint8Array = start;
          for (const [at, without, put] of slips) {
            bytes = spliced(bytes, at % bytes.length, without, put);
          }
          const photo = readPhoto(bytes);
          // What is taken is taken as it then stands.
          return !photo.ok || readPhoto(photo.value.bytes).ok;
        },
      ),
      { numRuns: 2000 },
    );
  });
});

test('the checksum is that of zlib', () => {
  // The check value of CRC-32 as its catalogues give it (from memory).
  expect(crc32(bytesOf('123456789'))).toBe(0xcbf43926);
  fc.assert(fc.property(fc.uint8Array(), (bytes) => crc32(bytes) === zlibCrc32(bytes)));
});

describe('names', () => {
  const NAMED: [string, string][] = [
    ['panel.jpg', 'panel.jpg'],
    ['C:\\fakepath\\IMG 0042.JPEG', 'IMG 0042.jpg'],
    ['../../etc/passwd', 'passwd.jpg'],
    ['/etc/.hidden.png', 'hidden.jpg'],
    ['a\r\nset-cookie: b.png', 'aset-cookie b.jpg'],
    ['\u202egpj.exe', 'gpj.jpg'],
    ['Müsli “Nuß” 🥣.heic', 'Müsli “Nuß” 🥣.jpg'],
    ['', 'panel.jpg'],
    ['...', 'panel.jpg'],
    [`${'🥣'.repeat(200)}.jpg`, `${'🥣'.repeat(80)}.jpg`],
  ];
  test.each(NAMED)('%j is kept as %j', (given, kept) => {
    expect(photoName(given, 'image/jpeg')).toBe(kept);
  });

  test('a header holds any name', () => {
    expect(shownAs('Müsli "1".jpg')).toBe(
      `inline; filename="M_sli _1_.jpg"; filename*=UTF-8''M%C3%BCsli%20%221%22.jpg`,
    );
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (given) => {
        const header = shownAs(photoName(given, 'image/png'));
        expect(header).toMatch(/^inline; filename="[A-Za-z0-9 ._-]+"; filename\*=UTF-8''[!-~]+$/);
        const whole = header.split("UTF-8''")[1] ?? '';
        return decodeURIComponent(whole) === photoName(given, 'image/png');
      }),
    );
  });
});
