import {
  createWriteStream,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
  mkdirSync,
} from 'node:fs';
import { once } from 'node:events';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { ZipFile } from 'yazl';
import { IdSet } from '#lib/work/fdc/id-set';
import { openDownload, type DownloadFile } from '#lib/work/fdc/open-download';
import { readCsv } from '#lib/work/fdc/read-csv';
import { readJsonFoods } from '#lib/work/fdc/read-json';
import { madeJson } from '../support/made-fdc/made-json';

const folder = mkdtempSync(join(tmpdir(), 'slate-fdc-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const quiet = () => undefined;

async function zipOf(name: string, files: Readonly<Record<string, Buffer>>): Promise<string> {
  const zip = new ZipFile();
  for (const [inside, bytes] of Object.entries(files)) zip.addBuffer(bytes, inside);
  zip.end();
  const path = join(folder, name);
  const out = createWriteStream(path);
  zip.outputStream.pipe(out);
  await once(out, 'close');
  return path;
}

async function textOf(file: DownloadFile | undefined): Promise<string> {
  const chunks: Buffer[] = [];
  for await (const chunk of (await file?.open()) as AsyncIterable<Buffer>) chunks.push(chunk);
  return Buffer.concat(chunks).toString('utf8');
}

describe('a download as published', () => {
  test('a zip of tables in a folder of its own, and the folder it was unpacked to', async () => {
    const tables = {
      'F_2025/food.csv': Buffer.from('a\n1\n'),
      'F_2025/README.pdf': Buffer.from('x'),
    };
    const zip = await openDownload(await zipOf('tables.zip', tables));
    expect([zip.kind, [...zip.files.keys()]]).toEqual(['csv', ['food.csv']]);
    expect(await textOf(zip.files.get('food.csv'))).toBe('a\n1\n');
    zip.close();
    const unpacked = join(folder, 'unpacked');
    mkdirSync(unpacked);
    writeFileSync(join(unpacked, 'food.csv'), 'a\n1\n');
    for (const path of [unpacked, join(unpacked, 'food.csv')]) {
      const plain = await openDownload(path);
      expect([plain.kind, await textOf(plain.files.get('food.csv'))]).toEqual(['csv', 'a\n1\n']);
    }
  });

  test('a zip with one JSON file', async () => {
    const zip = await openDownload(await zipOf('json.zip', { 'x/foods.json': Buffer.from('{}') }));
    expect([zip.kind, [...zip.files.keys()]]).toEqual(['json', ['foods.json']]);
    zip.close();
  });

  test('one that unpacks to far more than its size is not unpacked', async () => {
    const path = await zipOf('bomb.zip', { 'food.csv': Buffer.alloc(80_000_000, 'a') });
    await expect(openDownload(path)).rejects.toThrow(/would unpack to 80 MB, \d+ times its size/);
  });

  test('one that unpacks to more than it says breaks off where it goes past that', async () => {
    const path = await zipOf('liar.zip', { 'food.csv': Buffer.alloc(1_000_000, 'abc,') });
    const bytes = readFileSync(path);
    // The central directory's uncompressed size (APPNOTE.TXT 4.3.12: 24 bytes after its signature).
    const at = bytes.indexOf(Buffer.from([0x50, 0x4b, 0x01, 0x02]));
    bytes.writeUInt32LE(1000, at + 24);
    writeFileSync(path, bytes);
    const download = await openDownload(path);
    const file = download.files.get('food.csv') as DownloadFile;
    const rows: string[] = [];
    const read = readCsv(
      file,
      { needed: ['abc'], lacking: [] },
      { row: (cell) => rows.push(cell('abc')), fault: quiet, tell: quiet },
    );
    await expect(read).rejects.toThrow(/could not be read to its end/);
    download.close();
  });

  test.each([
    ['nothing.zip', 'There is no file'],
    ['text.txt', 'is no download'],
    ['broken.zip', 'is no whole zip file'],
    ['empty', 'holds neither food.csv nor one .json file'],
  ])('%s: %s', async (name, words) => {
    writeFileSync(join(folder, 'text.txt'), 'x');
    writeFileSync(join(folder, 'broken.zip'), 'PK\u0003\u0004 and no more');
    mkdirSync(join(folder, 'empty'), { recursive: true });
    await expect(openDownload(join(folder, name))).rejects.toThrow(words);
  });

  test('the same table twice, and other files than a download’s', async () => {
    const twice = await zipOf('twice.zip', {
      'a/food.csv': Buffer.from('a'),
      'b/food.csv': Buffer.from('b'),
    });
    await expect(openDownload(twice)).rejects.toThrow('holds food.csv twice');
    const other = await zipOf('other.zip', { 'a/people.csv': Buffer.from('a') });
    await expect(openDownload(other)).rejects.toThrow(
      'neither food.csv nor one .json file, but people.csv',
    );
  });
});

describe('a table', () => {
  async function read(text: string | Buffer) {
    const path = join(folder, `t${Math.random()}.csv`);
    writeFileSync(path, text);
    const download = await openDownload((writeFileSync(join(folder, 'food.csv'), ''), folder));
    const file = download.files.get(path.slice(folder.length + 1).toLowerCase()) as DownloadFile;
    const rows: [string, string][] = [];
    const faults: string[] = [];
    await readCsv(
      file,
      { needed: ['a'], lacking: ['b', 'c'] },
      {
        row: (cell) => rows.push([cell('a'), cell('b')]),
        fault: (at, why) => faults.push(`${at}: ${why}`),
        tell: quiet,
      },
    );
    rmSync(path);
    return { rows, faults };
  }

  // RFC 4180 section 2, rules 1 to 7, with a byte order mark and columns in another order.
  test('quotes, commas and line ends within quotes, CRLF and a byte order mark', async () => {
    const text = '\ufeff"b","a","new"\r\n"say ""hm"", so","1",""\r\n"two\r\nlines","2",""\r\n';
    expect(await read(text)).toEqual({
      rows: [
        ['1', 'say "hm", so'],
        ['2', 'two\r\nlines'],
      ],
      faults: [],
    });
  });

  test('the last line may lack its end, lines may be empty', async () => {
    expect((await read('a,b\n1,x\n\n2,y')).rows).toEqual([
      ['1', 'x'],
      ['2', 'y'],
    ]);
  });

  test('rows with too many or too few cells are told, the others kept', async () => {
    const { rows, faults } = await read('a,b\n1,x\n2\n3,y,z\n4,w\n');
    expect(rows.map(([a]) => a)).toEqual(['1', '4']);
    expect(faults).toEqual([
      'row 3: it has 1 cells, the first line has 2',
      'row 4: it has 3 cells, the first line has 2',
    ]);
  });

  test('a quote that is not doubled costs its own row, and the next at most', async () => {
    const line = (n: number) => `"${n}","text of ${n}"`;
    const lines = Array.from({ length: 1000 }, (_, n) => line(n));
    for (const wrong of ['"500","x "inner" quote"', '"500","x"y"', '"500","never closed']) {
      const { rows, faults } = await read(['a,b', ...lines.with(500, wrong)].join('\n'));
      expect(faults.length).toBeGreaterThan(0);
      expect(faults.join()).toContain('a quote stands inside a cell and is not doubled');
      const kept = new Set(rows.map(([a]) => Number(a)));
      const lost = lines.map((_, n) => n).filter((n) => !kept.has(n));
      expect(lost.every((n) => n === 500 || n === 501)).toBe(true);
      expect(lost.length).toBeLessThanOrEqual(2);
    }
  });

  test('a quote that is never closed does not fill the memory, and stops the table', async () => {
    const lines = Array.from({ length: 200_000 }, (_, n) => `${n},plain text of a row`).join('\n');
    await expect(read(`a,b\n1,x\n2,"never closed\n${lines}\n`)).rejects.toThrow(
      /row 3 or one soon after it opens a quote that is not closed within 1000000 bytes/,
    );
  });

  test('a column that is missing is named, with those that are there', async () => {
    await expect(read('fdc,b\n1,x\n')).rejects.toThrow(
      /lacks the column a\. Its first line names: fdc, b/,
    );
    await expect(read('a;b\n1;x\n')).rejects.toThrow(/commas between its columns/);
    await expect(read('')).rejects.toThrow('not even its column names');
  });
});

describe('a JSON download', () => {
  async function read(text: string | Buffer) {
    const path = join(folder, 'foods.json');
    writeFileSync(path, text);
    const download = await openDownload(path);
    const places: number[] = [];
    const foods: unknown[] = [];
    let why = '';
    try {
      const [file] = download.files.values();
      for await (const { place, food } of readJsonFoods(file as DownloadFile, quiet)) {
        places.push(place);
        foods.push(food);
      }
    } catch (error) {
      why = error instanceof Error ? error.message : String(error);
    }
    return { places, foods, why };
  }

  test('every food once, numbers with their printed digits, other fields and a byte order mark passed over', async () => {
    const text =
      '\ufeff{"about": {"BrandedFoods": [1]}, "BrandedFoods": [{"amount": 1.50, "n": [0E-8, -2]}, null], "x": 1}';
    const { foods, why } = await read(text);
    expect(why).toBe('');
    expect(foods).toEqual([{ amount: '1.50', n: ['0E-8', '-2'] }, null]);
  });

  test('letters that are cut by a piece of the file stay whole', async () => {
    const name = 'crème fraîche 🥕'.repeat(2000);
    const { foods } = await read(JSON.stringify({ FoundationFoods: [{ name }, { name }] }));
    expect(foods).toEqual([{ name }, { name }]);
  });

  test('cut anywhere it gives the whole foods before the cut and says so', async () => {
    const text = madeJson(20);
    const starts = [...text.matchAll(/\{"foodClass"/g)].map(({ index }) => index);
    for (const share of [0.02, 0.3, 0.5, 0.81, 0.999]) {
      const cut = Math.floor(text.length * share);
      const { places, why } = await read(text.slice(0, cut));
      const whole = starts.filter((_, at) => (starts[at + 1] ?? text.length - 2) - 1 <= cut).length;
      expect(places).toEqual(Array.from({ length: whole }, (_, at) => at + 1));
      expect(why).toMatch(/is not whole: it breaks off/);
    }
  });

  test.each([
    ['', 'before its first food'],
    ['<html>not here</html>', 'before its first food'],
    ['{"Foods": []}', 'has no list named FoundationFoods'],
    ['[{"fdcId": 1}]', 'a list without a name'],
    ['{"BrandedFoods": [{"a": 1}, oops]}', 'is not whole'],
  ])('%j: %s', async (text, words) => {
    expect((await read(text)).why).toContain(words);
  });

  test('a food without an end does not fill the memory', async () => {
    const { why } = await read(`{"BrandedFoods": [{"a": "${'x'.repeat(40_000_000)}`);
    expect(why).toContain('goes on for more than');
  });
});

test('a set of ids holds what was put in, small and large', () => {
  const ids = new IdSet();
  for (const id of [0, 7, 8, 1_000_000, 2_900_000, 2_147_483_647]) ids.add(id);
  const asked = [0, 1, 7, 8, 9, 1_000_000, 2_900_000, 2_900_001, 2_147_483_647, 2_147_483_646];
  expect(asked.filter((id) => ids.has(id))).toEqual([0, 7, 8, 1_000_000, 2_900_000, 2_147_483_647]);
});
