import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readStatements } from '#lib/claims/read-statements';
import { FORMS, labelled, statementSchema } from './labelled';

const { texts } = labelled('statements-open.json');
const SNIPPETS = texts.flatMap(({ text }) => text.match(/\S+\s*/g) ?? []);

const soup = fc.array(
  fc.oneof(fc.constantFrom(...SNIPPETS), fc.string({ unit: 'binary', maxLength: 4 })),
  {
    maxLength: 60,
  },
);
const anyText = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 200 }),
  soup.map((words) => words.join('')),
  soup.map((words) => words.join(' ')),
);
const context = fc.record({
  form: fc.constantFrom(...FORMS),
  dishes: fc.constant(['Smoky bean chili', 'Oat jars', '']),
  dish: fc.constantFrom('Smoky bean chili', ''),
  ingredients: fc.constantFrom(undefined, ['bean', '', 'öl 5']),
});

test('any text is read without a throw; places are in range and in order, and numbers are numbers', () => {
  fc.assert(
    fc.property(anyText, context, (text, known) => {
      let last = 0;
      for (const statement of readStatements(text, known)) {
        const { start, end, words } = statement;
        expect(start).toBeGreaterThanOrEqual(last);
        expect(end).toBeGreaterThan(start);
        expect(end).toBeLessThanOrEqual(text.length);
        expect(words).toBe(text.slice(start, end));
        last = start;
        if (!('low' in statement)) continue;
        expect(Number.isFinite(statement.low) && statement.low >= 0).toBe(true);
        expect(statement.high).toBeGreaterThanOrEqual(statement.low);
        for (const step of statement.how) {
          expect(step.start >= 0 && step.end <= text.length && step.end >= step.start).toBe(true);
        }
      }
    }),
    { numRuns: 300 },
  );
});

test('what is read has the shape of what is labelled', () => {
  for (const { text, form, context: known } of texts) {
    for (const read of readStatements(text, { form, ...known })) {
      const { start: _, end: __, how: ___, unsure: ____, ...said } = read;
      expect(statementSchema.safeParse(said).error?.message ?? '', read.words).toBe('');
    }
  }
});

// How long it takes, and that this grows with the length alone, is shown by `npm run bench -- claims`.
test('the same text is read the same', () => {
  const once = texts.map(({ text }) => text).join(' and then ');
  expect(readStatements(once, { form: 'card' })).toEqual(readStatements(once, { form: 'card' }));
});
