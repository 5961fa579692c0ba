import { createHash } from 'node:crypto';
import { execFileSync } from 'node:child_process';
import { createWriteStream, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { parseEpisodeFile } from '#lib/episode/file';
import { takeLock } from '#lib/lock/numbers-lock';
import { historyText, NO_HISTORY, parseHistory, type EpisodeHistory } from '#lib/publish/history';
import {
  BUNDLE_BOUNDS,
  lockEntryName,
  openBundle,
  photoEntryName,
} from '#lib/work/bundle/read-bundle';
import { bundleStream, type BundleEntry } from '#lib/work/bundle/write-bundle';

const AT = new Date('2026-11-30T08:00:00Z');
const EPISODE = readFileSync(new URL('../../../seed/demo.episode.json', import.meta.url), 'utf8');
const parsed = parseEpisodeFile(EPISODE);
if (!parsed.ok) throw new Error('the demo must be readable');
const lock = takeLock(parsed.value);
const PHOTO = Buffer.from('no picture, but bytes all the same');
const sha = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');

const HISTORY: EpisodeHistory = {
  ...NO_HISTORY,
  locks: [
    {
      ...{ id: 'lock-1', seq: 1, at: AT.toISOString(), sha256: lock.sha256 },
      ...{ schemaVersion: lock.schemaVersion, engineVersion: lock.engineVersion },
    },
  ],
  published: [{ lockId: 'lock-1', form: 'plain', at: AT.toISOString(), text: 'As copied\n☕' }],
  corrections: [{ oldLockId: 'lock-1', newLockId: 'lock-1', reason: 'Why', on: '2026-11-30' }],
  photos: [
    { versionId: 'v-1', sha256: sha(PHOTO), mime: 'image/png', name: 'a.png', size: PHOTO.length },
  ],
};

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'slate-bundle-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const entry = (name: string, bytes: string | Uint8Array): BundleEntry => ({
  name,
  bytes: () => Promise.resolve(bytes),
});
const WHOLE = [
  entry('episode.json', EPISODE),
  entry('history.json', historyText(HISTORY)),
  entry(lockEntryName(lock.sha256), lock.snapshot),
  entry(photoEntryName(sha(PHOTO)), PHOTO),
  entry('outputs/description.txt', 'for people'),
];

async function zipped(entries: readonly BundleEntry[]): Promise<string> {
  const path = join(folder, 'bundle.zip');
  await pipeline(bundleStream(entries, AT), createWriteStream(path));
  return path;
}

/** What a bundle is refused for, as "place: sentence". */
async function refusal(path: string): Promise<string> {
  const opened = await openBundle(path);
  if (opened.ok) {
    opened.value.close();
    throw new Error('it was taken');
  }
  return opened.problems.map(({ path: at, message }) => `${at}: ${message}`).join('\n');
}

const without = (name: string) => WHOLE.filter((each) => each.name !== name);
const withOther = (name: string, bytes: string) => [...without(name), entry(name, bytes)];

describe('a bundle', () => {
  it('reads back as what was packed, byte for byte, the lock under its own hash', async () => {
    const opened = await openBundle(await zipped(WHOLE));
    if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
    const { file, history, snapshot, photo, close } = opened.value;
    expect(file).toEqual(parsed.value);
    expect(history).toEqual(HISTORY);
    expect(await snapshot(lock.sha256)).toEqual({ ok: true, value: lock.snapshot });
    const bytes = await photo(sha(PHOTO));
    expect(bytes.ok && Buffer.from(bytes.value).equals(PHOTO)).toBe(true);
    close();
  });

  // A general-purpose tool: Python's own zipfile, which checks every CRC.
  it('is a zip to another program', async () => {
    const path = await zipped(WHOLE);
    const script =
      'import sys, zipfile; z = zipfile.ZipFile(sys.argv[1]); print(z.testzip()); print("\\n".join(z.namelist()))';
    const [bad, ...names] = execFileSync('python3', ['-c', script, path], { encoding: 'utf8' })
      .trim()
      .split('\n');
    expect(bad).toBe('None');
    expect(names).toEqual(WHOLE.map(({ name }) => name));
  });

  it('without a history is an episode alone', async () => {
    const opened = await openBundle(await zipped([entry('episode.json', EPISODE)]));
    expect(opened.ok && opened.value.history).toEqual(NO_HISTORY);
    if (opened.ok) opened.value.close();
  });

  it('that a file of cannot be read breaks off, and is no zip', async () => {
    const broken = { name: 'a.txt', bytes: () => Promise.reject(new Error('the disk is gone')) };
    await expect(zipped([...WHOLE, broken])).rejects.toThrow('the disk is gone');
    expect(await refusal(join(folder, 'bundle.zip'))).toContain('no whole zip file');
  });
});

describe('a zip that is no bundle is refused in words that say what and where', () => {
  it.each([
    ['no episode', without('episode.json'), 'episode.json: It is not in the zip.'],
    ['no JSON', withOther('episode.json', '{'), 'episode.json: this is not a JSON file'],
    ['another shape', withOther('history.json', '{}'), 'history.json format:'],
    ['history that is no JSON', withOther('history.json', 'x'), 'history.json: is not JSON'],
    [
      'a lock that is not there',
      without(lockEntryName(lock.sha256)),
      `locks/${lock.sha256}.json: history.json names it`,
    ],
    [
      'a photo that is not there',
      without(photoEntryName(sha(PHOTO))),
      `photos/${sha(PHOTO)}: history.json names it`,
    ],
    [
      'a file twice',
      [...WHOLE, entry('episode.json', EPISODE)],
      'episode.json: It is there twice.',
    ],
    [
      'more files than any bundle',
      Array.from({ length: BUNDLE_BOUNDS.entries + 1 }, (_, at) => entry(`${String(at)}.txt`, '')),
      'the zip of an episode holds a few dozen',
    ],
  ])('%s', async (_, entries, words) => {
    expect(await refusal(await zipped(entries))).toContain(words);
  });

  it('no zip at all, and one that is cut short', async () => {
    const path = join(folder, 'none.zip');
    writeFileSync(path, 'PK\u0003\u0004 and nothing more');
    expect(await refusal(path)).toContain('no whole zip file');
    const whole = readFileSync(await zipped(WHOLE));
    writeFileSync(path, whole.subarray(0, whole.length / 2));
    expect(await refusal(path)).toContain('no whole zip file');
  });

  // Names that yazl itself refuses to write: patched into a zip that it has written, in both headers.
  it.each(['../../esc.json', '/etcabs1.json', 'C:\\a\\esc.json'])('the path %s', async (name) => {
    const bytes = readFileSync(await zipped([...WHOLE, entry('outputs/a.json', '{}')]));
    const path = join(folder, 'patched.zip');
    const text = bytes.toString('latin1').replaceAll('outputs/a.json', name);
    writeFileSync(path, Buffer.from(text, 'latin1'));
    expect(await refusal(path)).toMatch(/cannot be read \((?:invalid|absolute)/);
  });

  it('a file that says it holds a gigabyte is not unpacked', async () => {
    const bytes = readFileSync(await zipped(WHOLE));
    // APPNOTE.TXT 4.3.12: uncompressed size stands 24 bytes into a file's header in the central directory.
    const at = bytes.indexOf(Buffer.from('PK\u0001\u0002', 'latin1'));
    bytes.writeUInt32LE(1_000_000_000, at + 24);
    const path = join(folder, 'claims.zip');
    writeFileSync(path, bytes);
    expect(await refusal(path)).toBe('episode.json: It would unpack to 1000 MB, more than 20 MB.');
  });

  it('a file that unpacks to more than it says is not read on', async () => {
    const bomb = Buffer.alloc(60_000_000, 0x20);
    const bytes = readFileSync(
      await zipped([{ name: 'episode.json', bytes: () => Promise.resolve(bomb) }]),
    );
    const at = bytes.indexOf(Buffer.from('PK\u0001\u0002', 'latin1'));
    bytes.writeUInt32LE(1000, at + 24);
    const path = join(folder, 'bomb.zip');
    writeFileSync(path, bytes);
    expect(await refusal(path)).toMatch(/^episode\.json: It cannot be unpacked \(too many bytes/);
  });

  it('a lock and a photo whose bytes are others than their name says', async () => {
    const entries = [
      ...WHOLE.slice(0, 2),
      entry(lockEntryName(lock.sha256), `${lock.snapshot} `),
      entry(photoEntryName(sha(PHOTO)), 'other bytes'),
    ];
    const opened = await openBundle(await zipped(entries));
    if (!opened.ok) throw new Error('its list is whole');
    for (const read of [opened.value.snapshot(lock.sha256), opened.value.photo(sha(PHOTO))]) {
      expect(await read).toMatchObject({ ok: false, problems: [{ code: 'bundle' }] });
    }
    opened.value.close();
  });
});

describe('a history', () => {
  it('reads back as it was written, and its text is the same each time', () => {
    expect(parseHistory(historyText(HISTORY))).toEqual({ ok: true, value: HISTORY });
    expect(historyText(HISTORY)).toBe(historyText(structuredClone(HISTORY)));
  });

  it('names what points at nothing, and what is there twice', () => {
    const other = {
      ...HISTORY,
      locks: [...HISTORY.locks, ...HISTORY.locks],
      published: [{ ...HISTORY.published[0], lockId: 'lock-9' }],
      corrections: [{ ...HISTORY.corrections[0], newLockId: 'lock-9' }],
    };
    const read = parseHistory(JSON.stringify(other));
    expect(read.ok ? [] : read.problems.map(({ path }) => path)).toEqual([
      'history.json locks[1]',
      'history.json published[0].lockId',
      'history.json corrections[0].newLockId',
    ]);
  });
});
