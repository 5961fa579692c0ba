import { expect, test } from 'vitest';
import { readStatements } from '#lib/claims/read-statements';
import { howWords, STAGES } from '#lib/overview/how-words';
import { labelled, labelledFiles } from '../claims/labelled';

test.each([
  [{ stage: 'hedge', as: 'atLeast' }, 'at least'],
  [{ stage: 'noun', as: 'energyKcal' }, 'calories'],
  [{ stage: 'scope', as: 'per100g' }, '100 g of it'],
  [{ stage: 'unit', as: 'flOz' }, 'fl oz'],
  [{ stage: 'kind', as: 'ovenTemperature' }, 'an oven temperature'],
  [{ stage: 'kind', as: 'noAdded sugars' }, 'no added sugars'],
  [{ stage: 'kind', as: 'oat milk' }, 'oat milk'],
  [{ stage: 'number', as: '46 to 48' }, '46 to 48'],
] as const)('what a reading took words for is told plainly: %j', (step, words) => {
  expect(howWords(step)).toBe(words);
});

test('no name of the code stands in how any open text was read', () => {
  const open = labelledFiles().filter((name) => name.includes('open'));
  const told = open
    .flatMap((name) => [...labelled(name).texts])
    .flatMap(({ text, form, context }) => readStatements(text, { form, ...context }))
    .flatMap(({ how }) => how)
    .filter(({ stage }) => stage !== 'dish')
    .map((step) => [STAGES[step.stage], howWords(step)].join(', '));
  expect(told.length).toBeGreaterThan(5000);
  expect([...new Set(told.filter((words) => /[a-z][A-Z][a-z]|\bundefined\b/.test(words)))]).toEqual(
    [],
  );
});
