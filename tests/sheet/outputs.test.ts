import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { parseEpisodeFile } from '#lib/episode/file';
import { outputs } from '#lib/sheet/outputs';
import { checkPlan } from '../shoot/checker';
import { expectGolden } from '../support/golden';

const demoText = readFileSync(
  fileURLToPath(new URL('../../seed/demo.episode.json', import.meta.url)),
  'utf8',
);

function demo() {
  const parsed = parseEpisodeFile(demoText);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems, null, 1));
  return parsed.value;
}

const clock = { now: demo().savedAt, seed: 1 };

describe('outputs of the demo', () => {
  const files = outputs(demo(), clock);

  it('are all of them', () => {
    expect([...files.keys()].sort()).toEqual([
      'day-sheet.csv',
      'day-sheet.ics',
      'day-sheet.txt',
      'description.html',
      'description.md',
      'description.txt',
      'evening-before.txt',
      'evidence.json',
      'figures.json',
      'pieces.txt',
      'risk.json',
      'shooting-order.json',
      'shopping.csv',
      'shopping.json',
      'shopping.txt',
    ]);
  });

  it('are the same bytes each time', () => {
    expect([...outputs(demo(), clock)]).toEqual([...files]);
  });

  it.each([
    'description.txt',
    'description.md',
    'description.html',
    'pieces.txt',
    'shopping.txt',
    'shopping.csv',
    'day-sheet.txt',
    'day-sheet.csv',
    'evening-before.txt',
    'risk.json',
  ])('%s reads as reviewed', (name) => {
    expectGolden(`demo/${name}`, files.get(name) ?? '');
  });

  it.each([
    'description.txt',
    'description.md',
    'description.html',
    'shopping.txt',
    'day-sheet.txt',
    'evening-before.txt',
    'evidence.json',
    'figures.json',
    'shooting-order.json',
    'shopping.json',
  ])('%s has line feeds only and ends with one', (name) => {
    const text = files.get(name) ?? '';
    expect(text).not.toContain('\r');
    expect(text.endsWith('\n')).toBe(true);
  });

  it('have a shooting order that the checker passes', () => {
    expect(checkPlan(demo(), JSON.parse(files.get('shooting-order.json') ?? ''))).toEqual([]);
  });

  it('have no numbers that only one of them knows: the description says what figures.json publishes', () => {
    const figures = JSON.parse(files.get('figures.json') ?? '');
    for (const dish of figures.dishes) {
      const { energyKcal, protein } = dish.whole;
      expect(files.get('description.txt')).toContain(
        `The whole dish: ${energyKcal.published} kcal · ${protein.published} g protein`,
      );
    }
  });

  it('leave out the day where the file has none', () => {
    expect([...outputs({ ...demo(), day: null }, clock).keys()]).not.toContain('day-sheet.txt');
  });
});
