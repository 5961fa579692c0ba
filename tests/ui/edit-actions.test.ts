import { describe, expect, test, vi } from 'vitest';
import { NO_FACTS } from '#lib/claims/edit-facts';
import { MOST_TEXTS } from '#lib/episode/edit-schema';
import { editStanding } from '#lib/overview/edit-standing';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeChanges } from '#lib/store/read-episode-changes';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { undo } from '#lib/store/undo';
import { UNTOUCHED } from '../../app/_ui/form/form-state';
import { readEditPage } from '../../app/episodes/[id]/edit/read-edit-page';
import { bringInNewer, bringInText, removeText } from '../../app/episodes/[id]/edit/actions';
import {
  answerNamed,
  askNamedAgain,
  isAbout,
  saysNothing,
  takeReadingBack,
  wasHeard,
} from '../../app/episodes/[id]/edit/reading-actions';
import { LARGEST_FILE } from '../../app/episodes/[id]/edit/largest-file';
import { withFreshDatabase } from '../store/database';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';
import { send } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', () => ({ redirect: vi.fn() }));
withFreshDatabase();

/** 101 kcal in 100 g, so 404 in the dish. */
const BEAN = aFood('bean', { protein: '10.0', energyKcal: '101' });
const SAID = 'the whole stew is fifty grams of protein, with sour cream on it';
const srt = (from: string, to: string, words = SAID) =>
  `1\n00:00:${from},000 --> 00:00:${to},000\n${words}\n`;

async function begin() {
  const stew = aRecipe('stew', [grams('beans', 'bean', 400)]);
  const file = aFile([aDish('s', stew, { title: 'Stew' })], [BEAN]);
  const done = await importEpisodeFile(file, new Date());
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  return done.value.episodeId;
}

async function read(episodeId: string) {
  const file = await readEpisodeFile(episodeId, '2026-12-10T08:00:00.000Z', { edit: true });
  if (!file) throw new Error('no episode');
  const standing = editStanding(file, NO_FACTS);
  return { file, ...standing, revs: await readRevisions(episodeId) };
}

async function withCaptions() {
  const episodeId = await begin();
  await send(bringInText, { episodeId, kind: 'captions', text: srt('10', '12') });
  return { episodeId, ...(await read(episodeId)) };
}

/** Sends a file by a form, as a browser does. */
async function sendFile(episodeId: string, bytes: Uint8Array<ArrayBuffer>, name = 'said.srt') {
  const form = new FormData();
  for (const [key, value] of Object.entries({ episodeId, kind: 'captions', text: '' })) {
    form.set(key, value);
  }
  form.set('file', new File([bytes], name));
  return bringInText(UNTOUCHED, form);
}

function placeOf(
  episodeId: string,
  { textId, start, end, words }: { textId: string; start: number; end: number; words: string },
) {
  return { episodeId, textId, start, end, words };
}

async function undoLast(episodeId: string) {
  const { acts } = await readEpisodeChanges(episodeId, { take: 1 });
  await undo(acts[0]?.groupId ?? '', { actor: 'test', at: new Date() });
}

const slots = async (episodeId: string) =>
  (await readEditPage(episodeId, null))?.texts.map(({ slot }) => slot);

describe('a text of the edit', () => {
  test('is pasted, told what it is, replaced by a newer one and taken out', async () => {
    const episodeId = await begin();
    const { state } = await send(bringInText, {
      episodeId,
      kind: 'captions',
      text: srt('10', '12'),
    });
    expect(state.done).toBe('Captions is in: SubRip captions, one line, until 0:12.');
    const { file, rows, revs } = await read(episodeId);
    expect(rows.map(({ words, place }) => [words, place])).toEqual([
      ['fifty grams of protein', '0:10'],
    ]);
    const textId = file.edit?.texts[0]?.id ?? '';
    const before = await slots(episodeId);
    expect(before).toHaveLength(1);
    await send(bringInNewer, {
      episodeId,
      textId,
      rev: revs[textId] ?? 0,
      text: srt('30', '33'),
    });
    const newer = await read(episodeId);
    expect(newer.rows.map(({ place }) => place)).toEqual(['0:30']);
    // The form that it was put in by stays, with what it says of it.
    expect(await slots(episodeId)).toEqual(before);
    const newId = newer.file.edit?.texts[0]?.id ?? '';
    await send(removeText, { episodeId, textId: newId, rev: newer.revs[newId] ?? 0 });
    expect((await read(episodeId)).rows).toEqual([]);
    await undoLast(episodeId);
    expect((await read(episodeId)).rows).toHaveLength(1);
  });

  // Unicode 17, 23.8: FF FE is the mark of UTF-16 in little endian.
  test('is read from a file in UTF-16, and a file that does not say how it is written is told', async () => {
    const episodeId = await begin();
    const wide = Uint8Array.from(
      Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from(srt('1', '2'), 'utf16le')]),
    );
    const state = await sendFile(episodeId, wide);
    expect(state.done).toBe('said.srt is in: SubRip captions, one line, until 0:02.');
    const latin = Uint8Array.from(Buffer.from(srt('1', '2', 'crème fraîche, 50 grams'), 'latin1'));
    expect((await sendFile(episodeId, latin)).done).toContain('Western European');
    const { file } = await read(episodeId);
    expect(file.edit?.texts[1]?.text).toContain('crème fraîche');
  });

  test.each([
    ['nothing', '', 'Paste the text, or choose a file.'],
    ['no text', 'a\0b', 'This is no text'],
  ])('that is %s is refused in words, and what was typed is kept', async (_, text, message) => {
    const episodeId = await begin();
    const { state } = await send(bringInText, { episodeId, kind: 'title', name: 'second', text });
    expect(state.problems[0]?.message).toContain(message);
    expect(state.typed).toMatchObject({ name: 'second', text });
  });

  test('is one of the two where it is pasted and a file is chosen, and an empty file is no words', async () => {
    const episodeId = await begin();
    const form = new FormData();
    for (const [key, value] of Object.entries({ episodeId, kind: 'captions', text: SAID })) {
      form.set(key, value);
    }
    form.set('file', new File([srt('10', '12')], 'said.srt'));
    const state = await bringInText(UNTOUCHED, form);
    expect(state.problems).toMatchObject([{ path: 'file', code: 'two' }]);
    expect(state.typed.text).toBe(SAID);
    form.set('text', srt('10', '12').replaceAll('\n', '\r\n'));
    expect((await bringInText(UNTOUCHED, form)).problems).toEqual([]);
    await undoLast(episodeId);
    // Where none was chosen, an empty file comes all the same, under some name.
    for (const name of ['', 'undefined', 'blob']) {
      const none = await sendFile(episodeId, new Uint8Array(), name);
      expect(none.problems).toMatchObject([{ path: 'text', code: 'empty' }]);
    }
    const empty = await sendFile(episodeId, new Uint8Array());
    expect(empty.problems).toMatchObject([{ path: 'file', code: 'empty' }]);
    expect((await read(episodeId)).file.edit).toBeUndefined();
  });

  test('is replaced where it stands', async () => {
    const episodeId = await begin();
    for (const name of ['first', 'second', 'third']) {
      await send(bringInText, { episodeId, kind: 'title', name, text: `${name} title` });
    }
    const { file, revs } = await read(episodeId);
    const textId = file.edit?.texts[1]?.id ?? '';
    await send(bringInNewer, { episodeId, textId, rev: revs[textId] ?? 0, text: 'another' });
    const after = await read(episodeId);
    expect(after.file.edit?.texts.map(({ text }) => text)).toEqual([
      'first title',
      'another',
      'third title',
    ]);
  });

  test('that is too long is refused with its size', async () => {
    const episodeId = await begin();
    const state = await sendFile(episodeId, new Uint8Array(LARGEST_FILE + 1).fill(65));
    expect(state.problems[0]).toMatchObject({ path: 'file', code: 'too-long' });
    expect(state.problems[0]?.message).toContain('16,000,003 bytes');
    const long = await sendFile(episodeId, new Uint8Array(8_000_001).fill(65));
    expect(long.problems[0]?.message).toContain('8,000,001 characters');
  });

  test('is refused where there are as many as an episode has', async () => {
    const episodeId = await begin();
    for (let at = 0; at < MOST_TEXTS; at += 1) {
      await send(bringInText, { episodeId, kind: 'title', text: `title ${at}` });
    }
    const { state } = await send(bringInText, { episodeId, kind: 'title', text: 'one more' });
    expect(state.problems[0]?.code).toBe('too-many');
  });
});

describe('a reading', () => {
  test('is put aside, and stays so when the captions come again with other times', async () => {
    const { episodeId, rows, file, revs } = await withCaptions();
    const [row] = rows;
    if (!row) throw new Error('nothing was read');
    expect(row.standing).toBe('off');
    await send(saysNothing, placeOf(episodeId, row));
    expect((await read(episodeId)).rows[0]?.standing).toBe('aside');
    const textId = file.edit?.texts[0]?.id ?? '';
    await send(bringInNewer, { episodeId, textId, rev: revs[textId] ?? 0, text: srt('40', '43') });
    const newer = await read(episodeId);
    expect(newer.rows.map(({ standing, place }) => [standing, place])).toEqual([['aside', '0:40']]);
    const mend = newer.rows[0]?.mend;
    await send(takeReadingBack, {
      episodeId,
      mendId: mend?.id ?? '',
      rev: newer.revs[mend?.id ?? ''] ?? 0,
    });
    expect((await read(episodeId)).rows[0]?.standing).toBe('off');
    await undoLast(episodeId);
    expect((await read(episodeId)).rows[0]?.standing).toBe('aside');
  });

  test('says what was really said, and what it is about', async () => {
    const { episodeId, rows } = await withCaptions();
    const place = placeOf(episodeId, rows[0] ?? { textId: '', start: 0, end: 0, words: '' });
    await send(wasHeard, { ...place, heard: 'forty grams of protein' });
    const heard = await read(episodeId);
    expect(heard.rows[0]).toMatchObject({ standing: 'agrees' });
    expect(heard.rows[0]?.mend?.words).toBe('You said that it was “forty grams of protein”.');
    await undoLast(episodeId);
    const segmentId = heard.file.episode.segments[0]?.id ?? '';
    await send(isAbout, { ...place, about: `half ${segmentId}` });
    const about = await read(episodeId);
    expect(about.rows[0]?.mend?.words).toBe('You said that it is about Stew, half of it.');
    expect(about.rows[0]?.standing).toBe('off');
  });

  test('of a text that was changed meanwhile is not kept', async () => {
    const { episodeId, rows } = await withCaptions();
    const row = rows[0] ?? { textId: '', start: 0, end: 0, words: '' };
    const { state } = await send(saysNothing, { ...placeOf(episodeId, row), words: 'other words' });
    expect(state.problems[0]?.code).toBe('changed');
    expect((await read(episodeId)).file.edit?.mends).toEqual([]);
  });

  test('without a choice is refused', async () => {
    const { episodeId, rows } = await withCaptions();
    const place = placeOf(episodeId, rows[0] ?? { textId: '', start: 0, end: 0, words: '' });
    for (const about of ['', 'nowhere']) {
      const { state } = await send(isAbout, { ...place, about });
      expect(state.problems[0]?.message).toBe('Choose what it is about.');
    }
  });
});

describe('a food that is named and not counted', () => {
  test('is answered, answered otherwise, and asked about again', async () => {
    const { episodeId, named } = await withCaptions();
    const [row] = named;
    expect(row).toMatchObject({ words: 'sour cream', places: ['0:10'], answer: null });
    const food = row?.food ?? '';
    await send(answerNamed, { episodeId, food, answer: 'leftOff' });
    const first = await read(episodeId);
    expect(first.named[0]?.answer).toBe('leftOff');
    const namedId = first.named[0]?.answerId ?? '';
    await send(answerNamed, {
      episodeId,
      food,
      answer: 'none',
      namedId,
      rev: first.revs[namedId] ?? 0,
    });
    const second = await read(episodeId);
    expect(second.named[0]).toMatchObject({ answer: 'none', answerId: namedId });
    await send(askNamedAgain, { episodeId, namedId, rev: second.revs[namedId] ?? 0 });
    expect((await read(episodeId)).named[0]?.answer).toBeNull();
  });
});
