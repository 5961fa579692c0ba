import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parseEpisodeFile } from '#lib/episode/file';
import { plannedLengthS, stageFacts } from '#lib/overview/episode-facts';

const url = new URL('../../seed/demo.episode.json', import.meta.url);
const parsed = parseEpisodeFile(readFileSync(url, 'utf8'));
if (!parsed.ok) throw new Error('the demo must be readable');
const file = parsed.value;

test('a cut is as long as its segments together', () => {
  expect(plannedLengthS([])).toBe(0);
  expect(plannedLengthS([{ plannedS: 40 }, { plannedS: 205 }])).toBe(245);
});

test('the facts of an episode count its dishes, ingredients and what is open', () => {
  const facts = stageFacts(file, false);
  expect(facts).toMatchObject({ dishes: 3, segments: 5, openLines: 1, copied: false });
  expect(facts.filmingDate).toBe(file.day?.date);
  const [line] = file.episode.segments.flatMap((segment) => segment.recipe?.lines ?? []);
  if (!line) throw new Error('the demo has ingredients');
  const without = structuredClone(file);
  for (const segment of without.episode.segments) {
    for (const each of segment.recipe?.lines ?? []) if (each.id === line.id) each.foodId = null;
  }
  expect(stageFacts(without, true)).toMatchObject({
    openLines: 2,
    lines: facts.lines,
    copied: true,
  });
});
