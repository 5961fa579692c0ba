import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parseEpisodeFile } from '#lib/episode/file';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import { lockStanding, whyBroken } from '#lib/lock/lock-standing';
import { takeLock } from '#lib/lock/numbers-lock';

const url = new URL('../../seed/demo.episode.json', import.meta.url);
const parsed = parseEpisodeFile(readFileSync(url, 'utf8'));
if (!parsed.ok) throw new Error('the demo must be readable');
const file = parsed.value;
const { snapshot } = takeLock(file);

test('numbers are a draft until a lock is taken, and locked from then on', () => {
  expect(lockStanding(null, file)).toBe('draft');
  expect(lockStanding(snapshot, file)).toBe('locked');
});

test('a change under a lock breaks it; a new title does not', () => {
  const changed = structuredClone(file);
  changed.episode.title = 'Another title';
  expect(lockStanding(snapshot, changed)).toBe('locked');
  const line = changed.episode.segments.flatMap((segment) => segment.recipe?.lines ?? [])[0];
  if (!line) throw new Error('the demo has ingredients');
  line.planned = { lowMg: 1000, valueMg: 1000, highMg: 1000 };
  expect(lockStanding(snapshot, changed)).toBe('broken');
});

test('a snapshot of another version of the calculation is broken', () => {
  const older = JSON.stringify({ ...(JSON.parse(snapshot) as object), engineVersion: 'older' });
  expect(lockStanding(older, file)).toBe('broken');
});

test.each(['', 'no JSON', '{}', '[]', 'null', JSON.stringify({ inputsSha256: 3 })])(
  'a snapshot that is %j is broken and says so',
  (other) => {
    expect(lockStanding(other, file)).toBe('broken');
    expect(whyBroken(other, file, episodeFigures(file))).toMatch(/cannot be read/);
  },
);

test('what a change did is told in words that never show an open number', () => {
  const opened = structuredClone(file);
  const dish = opened.episode.segments.find((segment) => segment.recipe !== null);
  const line = dish?.recipe?.lines[0];
  if (!line) throw new Error('the demo has ingredients');
  line.foodId = null;
  const told = whyBroken(snapshot, opened, episodeFigures(opened)) ?? '';
  expect(told).toMatch(new RegExp(`^${dish.title} \\d+ → open kcal, \\d+ → open g$`));
});

test('calories written to another step break the lock, and say so', () => {
  const coarser = structuredClone(file);
  coarser.episode.energyStep = 10;
  expect(lockStanding(snapshot, coarser)).toBe('broken');
  const told = whyBroken(snapshot, coarser, episodeFigures(coarser));
  expect(told).toBe('calories are written to 10 kcal now');
  const again = takeLock(coarser).snapshot;
  expect(lockStanding(again, coarser)).toBe('locked');
});

test('what is said in front of the camera breaks a lock taken before, since it fixes numbers; about fixes none', () => {
  const segmentId = file.episode.segments.find(({ recipe }) => recipe !== null)?.id ?? '';
  const saying = (hedge: 'exact' | 'about'): EpisodeFile => ({
    ...file,
    said: [
      {
        id: 'sd',
        at: '2026-11-14T11:40:00Z',
        scope: { kind: 'whole', segmentId },
        text: 'The whole dish has 640 calories.',
        numbers: [{ nutrient: 'energyKcal', amount: 640, hedge, value: 640 }],
      },
    ],
  });
  expect(lockStanding(snapshot, saying('about'))).toBe('locked');
  const said = saying('exact');
  expect(lockStanding(snapshot, said)).toBe('broken');
  expect(whyBroken(snapshot, said, episodeFigures(said))).toBe(
    'on 14 Nov you said “The whole dish has 640 calories.”',
  );
  expect(lockStanding(takeLock(said).snapshot, said)).toBe('locked');
});
