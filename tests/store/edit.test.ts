import { v7 as uuid } from 'uuid';
import { beforeEach, describe, expect, it } from 'vitest';
import { parseEpisodeData } from '#lib/episode/file';
import type { EpisodeFile } from '#lib/episode/schema';
import { stableJson } from '#lib/episode/stable-json';
import { actWords } from '#lib/overview/change-words';
import type { Result } from '#lib/result';
import { database } from '#lib/store/client';
import type { Edit } from '#lib/store/command';
import { copyEpisode } from '#lib/store/copy-again';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { mendColumns } from '#lib/store/episode-columns';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeChanges } from '#lib/store/read-episode-changes';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { removalEdits } from '#lib/store/remove-rows';
import { undo } from '#lib/store/undo';
import { write } from '#lib/store/write';
import { AT, withFreshDatabase } from './database';
import { EDIT } from './edit-fixture';
import { FILE } from './fixture';
import { upToIds } from './up-to-ids';

withFreshDatabase();

const WHOLE: EpisodeFile = { ...FILE, edit: EDIT };
const BY = { actor: 'me', at: AT };

function value<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}
const act = async (...edits: Edit[]) => value(await write({ ...BY, label: 'Act', edits })).groupId;

async function read(id: string, edit = true): Promise<EpisodeFile> {
  const file = await readEpisodeFile(id, FILE.savedAt, { edit });
  if (!file) throw new Error('the episode is not there');
  return file;
}

let episodeId = '';
beforeEach(async () => {
  episodeId = value(await importEpisodeFile(WHOLE, AT)).episodeId;
});

const editOf = async () => {
  const { edit } = await read(episodeId);
  if (!edit) throw new Error('the edit is not there');
  return edit;
};
const newText = (id: string, text: string, position = 9): Edit => ({
  op: 'create',
  entity: 'EditText',
  row: { id, episodeId, position, kind: 'captions', name: 'cut 2.vtt', text },
});

describe('the edit of an episode', () => {
  it('is imported and reads back as it was, up to ids', async () => {
    const file = await read(episodeId);
    expect(upToIds(file)).toEqual(upToIds(WHOLE));
    expect(parseEpisodeData(JSON.parse(JSON.stringify(file)))).toMatchObject({ ok: true });
  });

  it('is read only where it is asked for', async () => {
    expect(await read(episodeId, false)).not.toHaveProperty('edit');
    const { edit: _, ...rest } = await read(episodeId);
    expect(await read(episodeId, false)).toEqual(rest);
  });

  it('is absent where nothing of it was said', async () => {
    const bare = value(await importEpisodeFile(FILE, AT)).episodeId;
    expect(await read(bare)).not.toHaveProperty('edit');
  });

  it('names its rows with their revisions, so that a form can change them', async () => {
    const revisions = await readRevisions(episodeId);
    const { texts, mends, named } = await editOf();
    for (const { id } of [...texts, ...mends, ...named]) expect(revisions[id]).toBe(1);
  });

  it('keeps the last of two answers to one food, and of two readings of the same words', async () => {
    const [first] = (await editOf()).mends;
    if (!first) throw new Error('no reading was put right');
    const { words, before, after } = first;
    const beside = { words, before, after };
    const heard = { kind: 'heard', text: '650 calories' } as const;
    await act(
      { op: 'create', entity: 'NamedFood', row: answer(uuid(), 'butter', 'leftOff') },
      {
        op: 'create',
        entity: 'ReadingMend',
        row: { id: uuid(), episodeId, ...beside, ...mendColumns(heard) },
      },
    );
    const edit = await editOf();
    expect(edit.named.filter(({ food }) => food === 'butter')).toMatchObject([
      { answer: 'leftOff' },
    ]);
    expect(edit.mends.filter((mend) => mend.words === words)).toMatchObject([{ mend: heard }]);
    expect(parseEpisodeData(await read(episodeId))).toMatchObject({ ok: true });
  });
  const answer = (id: string, food: string, said: 'leftOff' | 'none') => ({
    ...{ id, episodeId, food, answer: said },
  });

  it('refuses a reading that is two things at once, or none', async () => {
    const row = { id: 'bad', episodeId, words: 'six', before: '', after: '' };
    for (const wrong of [
      { kind: 'heard' as const },
      { kind: 'nothing' as const, heard: 'seven' },
      { kind: 'about' as const, scope: null },
      { kind: 'about' as const, scope: 'portion' as const, portionId: 'p' },
    ]) {
      const edits: Edit[] = [{ op: 'create', entity: 'ReadingMend', row: { ...row, ...wrong } }];
      expect(await write({ ...BY, label: 'x', edits })).toMatchObject({
        ok: false,
        problems: [{ code: 'invalid' }],
      });
    }
  });
});

describe('a text of the edit', () => {
  const long = `${'a'.repeat(159)}🫕${'The pie has 300 calories. '.repeat(40_000)}`;

  it('is in the journal by its beginning alone, and comes back whole', async () => {
    const before = stableJson(await read(episodeId));
    const added = await act(newText(`${episodeId}t`, long));
    const rev = (await readRevisions(episodeId))[`${episodeId}t`] ?? 0;
    const removed = await act(...(await removalEdits('EditText', `${episodeId}t`, rev)));
    expect(stableJson(await read(episodeId))).toBe(before);
    await undoAct(removed);
    expect((await editOf()).texts.at(-1)?.text).toBe(long);
    await undoAct(added);
    expect(stableJson(await read(episodeId))).toBe(before);
    const lines = await database().change.findMany({ where: { entityId: `${episodeId}t` } });
    expect(lines).toHaveLength(4);
    for (const { before: was, after: is } of lines) {
      expect((was?.length ?? 0) + (is?.length ?? 0)).toBeLessThan(2000);
      // Never half of a pair of surrogates (RFC 3629, 3).
      expect(is).not.toMatch(/\\ud83e/);
    }
  });

  it('is renamed and moved, and its words never change: another text is another row', async () => {
    const id = (await editOf()).texts[0]?.id ?? '';
    const patched = (patch: object, rev: number) =>
      write({
        ...BY,
        label: 'x',
        edits: [{ op: 'update', entity: 'EditText', id, rev, patch } as Edit],
      });
    const renamed = value(await patched({ name: 'the cut', position: 7 }, 1)).groupId;
    expect((await editOf()).texts.at(-1)).toMatchObject({ id, name: 'the cut' });
    expect(await patched({ text: 'other words' }, 2)).toMatchObject({
      ok: false,
      problems: [{ code: 'append-only' }],
    });
    await undoAct(renamed);
    expect((await editOf()).texts).toEqual(
      EDIT.texts.map((text) => ({ ...text, id: expect.any(String) })),
    );
  });

  it('is put in the place of another in one act, which is undone as one', async () => {
    const [old] = (await editOf()).texts;
    if (!old) throw new Error('no text');
    const before = stableJson(await read(episodeId));
    const put = await act(
      { op: 'remove', entity: 'EditText', id: old.id, rev: 1 },
      newText(`${episodeId}u`, 'WEBVTT', 0),
    );
    expect((await editOf()).texts[0]).toMatchObject({ name: 'cut 2.vtt', text: 'WEBVTT' });
    await undoAct(put);
    expect(stableJson(await read(episodeId))).toBe(before);
  });
});

async function undoAct(groupId: string): Promise<void> {
  value(await undo(groupId, BY));
}

describe('what was said of a dish that is taken out', () => {
  it.each([
    ['Segment', ({ episode }: EpisodeFile) => episode.segments[1]?.id ?? ''],
    ['Portion', ({ episode }: EpisodeFile) => episode.segments[1]?.recipe?.portions[0]?.id ?? ''],
  ] as const)('goes with the %s, stands in no file, and comes back with it', async (entity, of) => {
    const file = await read(episodeId);
    const id = of(file);
    const rev = (await readRevisions(episodeId))[id] ?? 0;
    const gone = await act(...(await removalEdits(entity, id, rev)));
    const without = await read(episodeId);
    expect(without.edit?.mends.map(({ words }) => words)).toEqual(
      EDIT.mends.map(({ words }) => words).filter((words) => words !== '610 calories'),
    );
    expect(parseEpisodeData(JSON.parse(JSON.stringify(without)))).toMatchObject({ ok: true });
    await undoAct(gone);
    expect(stableJson(await read(episodeId))).toBe(stableJson(file));
  });
});

describe('an episode made again', () => {
  it('has no text of the first, and what its claim words are judged by', async () => {
    const { id } = value(await copyEpisode(episodeId, { amounts: 'planned', at: AT }));
    const again = await read(id);
    expect(again).not.toHaveProperty('edit');
    expect(again.episode.segments.map(({ claims }) => claims)).toEqual(
      FILE.episode.segments.map(({ claims }) => claims),
    );
  });
});

describe('what claim words are judged by', () => {
  it('tells “nobody said” from “said, and it is no meal”', async () => {
    const claims = (await read(episodeId)).episode.segments.map((segment) => segment.claims);
    expect(claims).toEqual(FILE.episode.segments.map((segment) => segment.claims));
    expect(claims).toContain(null);
    expect(claims).toContainEqual({ proteinPermille: null, raccMg: null, meal: false });
  });
});

describe('a speaking rate', () => {
  const rate = (wordsPerMinute: number | null) => {
    const creator = { ...FILE.creator, wordsPerMinute };
    return importEpisodeFile({ ...FILE, creator }, AT);
  };
  it('is taken from a file where nobody said one, and stays where somebody did', async () => {
    expect((await read(episodeId)).creator.wordsPerMinute).toBe(152);
    value(await rate(90));
    value(await rate(null));
    expect((await read(episodeId)).creator.wordsPerMinute).toBe(152);
    const { rev } = await database().creator.findUniqueOrThrow({
      where: { id: DEFAULT_CREATOR_ID },
    });
    const none: Edit = {
      ...{ op: 'update', entity: 'Creator', id: DEFAULT_CREATOR_ID, rev },
      patch: { wordsPerMinute: null },
    };
    await act(none);
    value(await rate(90));
    expect((await read(episodeId)).creator.wordsPerMinute).toBe(90);
    await act({ ...none, rev: rev + 2, patch: { wordsPerMinute: 152 } } as Edit);
  });
});

describe('the journal of an edit', () => {
  it('says in words what was added and how words are read now', async () => {
    const { mends } = await editOf();
    const about = mends.find(({ words }) => words === '610 calories');
    const first = mends[0];
    if (!about || !first) throw new Error('no reading');
    await act(newText(`${episodeId}w`, 'WEBVTT'));
    await act({
      ...{ op: 'update', entity: 'ReadingMend', id: first.id, rev: 1 },
      patch: mendColumns(about.mend),
    });
    const { acts, names } = await readEpisodeChanges(episodeId, { take: 3 });
    const told = acts.map(({ lines }) =>
      actWords(lines, { names, region: 'EU', zone: 'Europe/Copenhagen' }).join(' | '),
    );
    expect(told[0]).toBe(
      'Reading put right: “600 calories” as no number → “600 calories” of Barley skillet, a bowl',
    );
    expect(told[1]).toBe('Text of the edit added: captions or transcript “cut 2.vtt”');
    expect(told[2]).toContain('5 texts of the edit');
  });
});
