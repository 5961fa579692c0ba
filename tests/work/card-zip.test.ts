import { buffer } from 'node:stream/consumers';
import { PNG } from 'pngjs';
import { describe, expect, test } from 'vitest';
import { fromBufferPromise, type Entry } from 'yauzl';
import { cardFiles } from '#lib/publish/cards/card-files';
import { cardZip } from '#lib/work/card-zip';
import { drawn } from '#lib/work/drawings';
import { COLOURS, draftCards } from '../publish/cards/support';

const AT = new Date('2026-11-30T08:00:00Z');
const FILES = cardFiles(draftCards().slice(0, 3), {
  ...{ size: '1920x1080', ground: 'plate', colours: COLOURS },
});
const LISTS = new Map([['cards.csv', 'file\r\n']]);

async function opened(bytes: Buffer): Promise<Map<string, Buffer>> {
  const zip = await fromBufferPromise(bytes);
  const found = new Map<string, Buffer>();
  for await (const entry of zip.eachEntry() as AsyncIterable<Entry>) {
    found.set(entry.fileName, await buffer(await zip.openReadStreamPromise(entry)));
  }
  return found;
}

describe('all cards in one zip', () => {
  test('has PNG and SVG of each in running order and the lists, read by another library', async () => {
    const told: number[] = [];
    const { signal } = new AbortController();
    const zip = cardZip({ files: FILES, lists: LISTS, at: AT }, signal, (count) =>
      told.push(count),
    );
    const entries = await opened(await buffer(zip));
    const names = FILES.flatMap(({ name }) => [`${name}.png`, `${name}.svg`]);
    expect([...entries.keys()]).toEqual([...names, 'cards.csv']);
    expect(told).toEqual([1, 2, 3]);
    for (const { name } of FILES) {
      const { width, height } = PNG.sync.read(entries.get(`${name}.png`) ?? Buffer.alloc(0));
      expect([width, height]).toEqual([1920, 1080]);
      expect(entries.get(`${name}.svg`)?.toString()).not.toContain('<text');
    }
  });

  test('ends with its request: what is not drawn yet is not drawn', async () => {
    const stop = new AbortController();
    const told: number[] = [];
    const zip = cardZip({ files: FILES, lists: LISTS, at: AT }, stop.signal, (count) => {
      told.push(count);
      stop.abort();
    });
    await expect(buffer(zip)).rejects.toThrow('Nobody waits');
    expect(told.length).toBeLessThan(FILES.length);
  });

  test('a drawing that cannot be read is told, and the next is drawn', async () => {
    const { signal } = new AbortController();
    await expect(drawn({ svg: '<svg', as: 'png' }, signal)).rejects.toThrow();
    const svg = '<svg xmlns="http://www.w3.org/2000/svg" width="3" height="2"/>';
    const { width, height } = PNG.sync.read(Buffer.from(await drawn({ svg, as: 'png' }, signal)));
    expect([width, height]).toEqual([3, 2]);
  });
});
