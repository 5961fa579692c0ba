import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { NO_FACTS } from '#lib/claims/edit-facts';
import { parseEpisodeFile } from '#lib/episode/file';
import { stableJson } from '#lib/episode/stable-json';
import { episodeFigures } from '#lib/figures/episode-figures';
import { confirmedOnly, publishedNumbers } from '#lib/figures/published-numbers';
import { takeLock } from '#lib/lock/numbers-lock';
import { evidence } from '#lib/publish/evidence';
import { evidenceTable } from '#lib/publish/evidence-table';
import type { EvidenceNumber } from '#lib/publish/evidence-numbers';
import { expectGolden } from '../support/golden';

const url = new URL('../../seed/demo.episode.json', import.meta.url);
const parsed = parseEpisodeFile(readFileSync(url, 'utf8'));
if (!parsed.ok) throw new Error('the demo must be readable');
const file = parsed.value;
const at = '2026-12-14T09:00:00.000Z';
const lock = { seq: 1, at, ...takeLock(file) };
const told = evidence(file, { lock, facts: NO_FACTS, at });

test('evidence is the same for the same input, and holds the lock without its snapshot', () => {
  expect(stableJson(evidence(file, { lock, facts: NO_FACTS, at }))).toBe(stableJson(told));
  expect(told.lock).toMatchObject({ seq: 1, at, sha256: lock.sha256, holds: true });
  expect(told.lock).not.toHaveProperty('snapshot');
  expect(told.difference).toBeNull();
});

test('its numbers are those that are published, and their rows add up to them', () => {
  const numbers = confirmedOnly(publishedNumbers(file, episodeFigures(file)));
  const published = told.numbers.filter(({ nutrient }) => nutrient === 'protein');
  expect(published.length).toBeGreaterThan(4);
  for (const { scope, text, nutrient, value, working, status } of published) {
    expect(text).toBe(numbers(nutrient, scope).text);
    if (status !== 'known' || value === null) continue;
    const sum = working.reduce((all, { adds }) => all + Number(adds), 0);
    expect(Math.abs(sum - value)).toBeLessThanOrEqual(0.0501);
  }
});

test('every number that a statement was held against is in it', () => {
  const fibre = told.numbers.find(({ nutrient }) => nutrient === 'fibre');
  expect(fibre?.stated).toBe(true);
  expect(told.statements.some(({ verdict }) => verdict === 'off')).toBe(true);
  expect(told.remarks.join(' ')).toContain('does not say that a number is true');
  expect(told.remarks.join(' ')).toContain('you and your counsel');
});

test('a lock that is broken says by what; without one it is a draft’s', () => {
  const changed = structuredClone(file);
  const line = changed.episode.segments.flatMap(({ recipe }) => recipe?.lines ?? [])[0];
  if (!line) throw new Error('the demo has ingredients');
  line.foodId = null;
  const broken = evidence(changed, { lock, facts: NO_FACTS, at });
  expect(broken.lock?.holds).toBe(false);
  expect(broken.difference?.inputs[0]).toMatchObject({
    what: '“150 g pearl barley”, food',
    to: '',
  });
  const draft = evidence(file, { lock: null, facts: NO_FACTS, at });
  expect([draft.lock, draft.difference]).toEqual([null, null]);
});

test('the working of the demo reads as reviewed', () => {
  const { dishes, day } = evidenceTable(told);
  const written = (of: readonly EvidenceNumber[]) =>
    of
      .map(({ label, text, unit }) => [label, text, text === 'open' ? '' : unit].join(' ').trim())
      .join(' · ');
  const lines = [
    ...dishes.flatMap(({ title, numbers, rows, parts }) => [
      `${title}: ${written(numbers)}`,
      ...rows.map(({ ingredient, grams, foods, adds }) =>
        ['', ingredient, grams, foods, ...adds].join('\t'),
      ),
      ...parts.map(({ part, numbers: of }) => `  ${part}: ${written(of)}`),
    ]),
    ...day.map(
      ({ title, label, text, unit, range }) => `${title}: ${label} ${text} ${unit} (${range})`,
    ),
  ];
  expectGolden('demo/evidence.txt', `${lines.join('\n')}\n`);
});
