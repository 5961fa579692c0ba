import { v7 as uuid } from 'uuid';
import { describe, expect, it } from 'vitest';
import type { Draft } from '#lib/draft/draft';
import { countOf, offerOf, ticked } from '#lib/draft/offer';
import { outTextsOf } from '#lib/draft/out-texts';
import { readDraft } from '#lib/draft/read-draft';
import type { EpisodeFile } from '#lib/episode/schema';
import { stableJson } from '#lib/episode/stable-json';
import type { Edit } from '#lib/store/command';
import { draftEdits } from '#lib/store/draft-edits';
import { outEpisodeEdits } from '#lib/store/out-episode';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { write } from '#lib/store/write';
import { writeReference } from '#lib/store/write-reference';
import { AT, withFreshDatabase } from './database';
import { BARLEY, SALT } from './fixture';

withFreshDatabase();

const TITLE = 'Two trays, one oven';
const DESCRIPTION = `Everything is weighed.

0:00 Intro
0:30 Barley tray
2:15 Oat slices

BARLEY TRAY (serves 4)
90 g pearled barley, raw
salt to taste
dill + pepper

Method
Bake for 35 minutes at 180 °C.
Leave it to rest.

OAT SLICES
240 g rolled oats
My scale: https://quay-scales.example/one`;
const CAPTIONS = '[0:31] I used 90 grams of barley\n[2:20] two hundred and forty grams of oats';

function drafted(texts: Parameters<typeof readDraft>[0]): Draft {
  const read = readDraft(texts);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

async function written(edits: readonly Edit[]): Promise<void> {
  const done = await write({ actor: 'me', at: AT, label: 'Act', edits });
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
}

async function read(id: string): Promise<EpisodeFile> {
  const file = await readEpisodeFile(id, '2026-11-25T08:00:00Z', { edit: true });
  if (!file) throw new Error('the episode is not there');
  return file;
}

async function out(): Promise<string> {
  const episodeId = uuid();
  const draft = drafted({ title: TITLE, description: DESCRIPTION, captions: CAPTIONS });
  const texts = [
    { kind: 'captions' as const, name: 'cut.vtt', text: CAPTIONS },
    { kind: 'description' as const, name: 'Description', text: DESCRIPTION },
    { kind: 'title' as const, name: 'Title', text: TITLE },
  ];
  await written(await outEpisodeEdits({ episodeId, region: 'EU', draft, texts }));
  return episodeId;
}

describe('an episode of the texts of one that is out', () => {
  it('has its dishes, times, portions and steps, its best matches not confirmed, and the texts', async () => {
    await writeReference([BARLEY, SALT], { source: 'Harbour table', release: 'H1', at: AT });
    const { episode, edit } = await read(await out());
    const { title, hook, webLinks, segments } = episode;
    expect({ title, hook, links: webLinks.map(({ label }) => label) }).toEqual({
      title: TITLE,
      hook: 'Everything is weighed.',
      links: ['My scale'],
    });
    expect(
      segments.map(({ kind, title: name, inFrame, outFrame, eaten }) => [
        kind,
        name,
        inFrame,
        outFrame,
        eaten.num,
      ]),
    ).toEqual([
      ['talk', 'Intro', 0, 750, 0],
      ['recipe', 'Barley tray', 750, 3375, 1],
      // To the last mark of the captions.
      ['recipe', 'Oat slices', 3375, 3500, 1],
    ]);
    const [, tray, slices] = segments;
    expect(tray?.recipe?.lines.map(({ text, match, foodId }) => [text, match, foodId])).toEqual([
      ['90 g pearled barley, raw', 'provisional', BARLEY.id],
      ['salt to taste', 'provisional', SALT.id],
      ['dill', 'provisional', null],
      ['pepper', 'provisional', null],
    ]);
    expect(tray?.recipe?.portions).toMatchObject([{ kind: 'count', of: 4 }]);
    expect(tray?.recipe?.method).toBe('Bake for 35 minutes at 180 °C.\nLeave it to rest.');
    // The rest has no minutes in the text, so that it is none of the steps.
    expect(tray?.steps.map(({ usualS, oven }) => [usualS, oven?.milliC])).toEqual([
      [2100, 180_000],
    ]);
    expect(slices?.recipe?.lines.map(({ text, foodId }) => [text, foodId])).toEqual([
      ['240 g rolled oats', null],
    ]);
    expect(edit?.texts.map(({ kind, text }) => [kind, text])).toEqual([
      ['captions', CAPTIONS],
      ['description', DESCRIPTION],
      ['title', TITLE],
    ]);
  });

  it('is offered nothing by its own texts, and by newer ones what it lacks', async () => {
    const id = await out();
    const before = await read(id);
    const own = offerOf(drafted(outTextsOf(before.edit?.texts ?? [])), before.episode);
    expect(countOf(own)).toBe(0);
    const newer = drafted({
      description: DESCRIPTION.replace(
        '240 g rolled oats',
        '240 g rolled oats\n30 g honey',
      ).replace('OAT SLICES', 'OAT SLICES\nMakes 12'),
    });
    const offer = offerOf(newer, before.episode);
    expect(
      offer.segments.map(({ title, parts }) => [title, parts.map(({ words }) => words)]),
    ).toEqual([['Oat slices', ['30 g honey', '12 equal portions']]]);
    // The same food in other words is told, so that it is not counted twice.
    const again = drafted({ description: 'OAT SLICES\n250 grams of rolled oats\n5 g salt' });
    const told = offerOf(again, before.episode).segments.flatMap(({ parts }) => parts);
    expect(told.map((part) => part.kind === 'line' && [part.words, part.has])).toEqual([
      ['250 grams of rolled oats', '240 g rolled oats'],
      ['5 g salt', null],
    ]);
    const chosen = ticked(offer, (key) => key.includes('line'));
    expect(countOf(chosen)).toBe(1);
    await written(
      await draftEdits(chosen, {
        episodeId: id,
        rate: before.episode.rate,
        segments: before.episode.segments,
        revs: await readRevisions(id),
        fresh: false,
      }),
    );
    const after = await read(id);
    const lines = after.episode.segments[2]?.recipe?.lines ?? [];
    expect(lines.map(({ text }) => text)).toEqual(['240 g rolled oats', '30 g honey']);
    // Nothing else is touched.
    const rest = ({ episode }: EpisodeFile) => stableJson(episode.segments.slice(0, 2));
    expect(rest(after)).toBe(rest(before));
  });
});
