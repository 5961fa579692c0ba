import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parseEpisodeFile } from '#lib/episode/file';
import { lockStanding } from '#lib/lock/lock-standing';
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
