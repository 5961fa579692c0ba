import readQr from 'jsqr';
import { describe, expect, test } from 'vitest';
import { qrPath } from '#lib/door/qr-path';

const SCALE = 4;

/** A drawing as a camera sees it: four pixels to a module, dark on light, RGBA. */
function pixels({ size, path }: { readonly size: number; readonly path: string }) {
  const width = size * SCALE;
  const data = new Uint8ClampedArray(width * width * 4).fill(255);
  for (const [, x = '', y = ''] of path.matchAll(/M(\d+) (\d+)h1v1h-1z/g)) {
    for (let dy = 0; dy < SCALE; dy += 1) {
      for (let dx = 0; dx < SCALE; dx += 1) {
        const at = ((Number(y) * SCALE + dy) * width + Number(x) * SCALE + dx) * 4;
        data.set([0, 0, 0], at);
      }
    }
  }
  return { data, width };
}

describe('a QR code', () => {
  test.each([
    'https://192.168.1.20:4311/pair#ACDEFGHJ',
    'https://[fd12:3456:789a:bcde:0123:4567:89ab:cdef]:65535/pair#ACDEFGHJ',
    'https://kitchen-with-a-rather-long-name-as-some-people-give-it.local:4311/pair#34679AAA',
  ])('%s is read back by another program', (text) => {
    const { data, width } = pixels(qrPath(text));
    expect(readQr(data, width, width)?.data).toBe(text);
  });

  test('has four modules of quiet on each side', () => {
    const { size, path } = qrPath('https://192.168.1.20:4311/pair#ACDEFGHJ');
    const places = [...path.matchAll(/M(\d+) (\d+)/g)].flatMap(([, x, y]) => [
      Number(x),
      Number(y),
    ]);
    expect(Math.min(...places)).toBe(4);
    expect(Math.max(...places)).toBe(size - 5);
  });
});
