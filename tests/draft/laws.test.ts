import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Draft, OutTexts } from '#lib/draft/draft';
import { readDraft } from '#lib/draft/read-draft';
import { withoutMarkup, withoutUnseen } from '#lib/episode/read-ingredient-clean';
import { readSpoken } from '#lib/cut/spoken';
import { LAYOUTS } from './layouts';
import { MORE_LAYOUTS } from './more-layouts';
import { printDraft } from './print-draft';

const ALL = [...LAYOUTS, ...MORE_LAYOUTS];

function draftOf(texts: OutTexts): Draft {
  const read = readDraft(texts);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

const LINES = ALL.flatMap(({ description = '' }) => description.split('\n'));
const SAID = ALL.flatMap(({ captions = '' }) => captions.split('\n'));
const line = fc.oneof(
  { weight: 6, arbitrary: fc.constantFrom(...LINES) },
  { weight: 1, arbitrary: fc.constant('') },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 30 }) },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      '| a | b',
      '\t',
      '0:0',
      '(((',
      '½',
      '## ',
      '- ',
      '\u202E',
      '1)',
      'Serves',
      '🥣',
    ),
  },
);
const someTexts = fc.record({
  description: fc.array(line, { maxLength: 40 }).map((lines) => lines.join('\n')),
  captions: fc
    .array(fc.oneof(fc.constantFrom(...SAID), line), { maxLength: 12 })
    .map((lines) => lines.join('\n')),
  title: fc.oneof(
    fc.constantFrom('', ...ALL.map(({ title = '' }) => title)),
    fc.string({ unit: 'binary', maxLength: 40 }),
  ),
});

/** One blank between words, and signs that stand for others as those: '½' as '1⁄2'. */
const folded = (text: string) =>
  text
    .normalize('NFKC')
    .replace(/[\s*|]+/gu, ' ')
    .trim();

/** Words of a line as they are seen, without markup. */
function seen(text: string, at: number): string {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  return folded(withoutUnseen(withoutMarkup(lines[at - 1] ?? '').text).text);
}

/** Everything that is said, by readSpoken alone. */
function spoken(captions: string): string {
  const read = readSpoken(captions);
  return read.ok ? folded(read.value.lines.map(({ text }) => text).join(' ')).toLowerCase() : '';
}

interface Texts {
  readonly title: string;
  readonly description: string;
  readonly captions: string;
}

function check(texts: Texts, draft: Draft): void {
  const said = spoken(texts.captions);
  let lastMs = -1;
  const used = new Map<string, number>();
  for (const { inMs, outMs, lines, portions, kind } of draft.segments) {
    if (inMs !== null) {
      expect(inMs).toBeGreaterThan(lastMs);
      lastMs = inMs;
      if (outMs !== null) expect(outMs).toBeGreaterThan(inMs);
    }
    if (kind === 'talk') expect([lines.length, portions]).toEqual([0, null]);
    if (portions)
      expect(Number.isInteger(portions.count) && portions.count > 0 && portions.count <= 1000).toBe(
        true,
      );
    const places = lines
      .filter(({ from }) => from.text === 'description')
      .map(({ from }) => from.line);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    for (const { text, from } of lines) {
      expect(text.trim()).not.toBe('');
      // Where it says it stands: all of its words, in a list with a head but for the head's unit.
      const there = from.text === 'description' ? seen(texts.description, from.line) : said;
      const words = folded(text).split(' ');
      const missing = words.filter((word) => !there.toLowerCase().includes(word.toLowerCase()));
      expect(
        missing.filter((word) => !/^(?:g|ml)$/.test(word)),
        `${text} in ${there}`,
      ).toEqual([]);
      const key = `${from.text} ${from.line} ${text}`;
      used.set(key, (used.get(key) ?? 0) + 1);
      const times = from.text === 'description' ? there.split(words[0] ?? '').length - 1 : 1;
      expect(used.get(key), key).toBeLessThanOrEqual(times);
    }
  }
}

describe('a draft', () => {
  test('has no ingredient that does not stand where it says, none twice, and keeps the order', () => {
    for (const { title = '', description = '', captions = '' } of ALL) {
      const texts = { title, description, captions };
      check(texts, draftOf(texts));
    }
    fc.assert(
      fc.property(someTexts, (texts) => {
        const read = readDraft(texts);
        if (read.ok) check(texts, read.value);
      }),
      { numRuns: 300 },
    );
  });

  test('that is printed as a description is read again as it was', () => {
    for (const texts of ALL) {
      const draft = draftOf(texts);
      const again = draftOf({ title: texts.title, description: `${printDraft(draft)}\n` });
      const said = ({ hook, segments, links, disclosure }: Draft) => ({
        hook: hook?.text,
        segments: segments
          .filter(({ kind, lines }) => kind === 'recipe' && lines.length > 0)
          .map(({ title, portions, lines, method }) => ({
            title,
            portions: portions?.count,
            lines: lines.map(({ text }) => text),
            method: method.map(({ text }) => text),
          })),
        links: links.map(({ label, url }) => [label, url]),
        disclosure: disclosure?.text,
      });
      expect(said(again), texts.name).toEqual(said(draft));
    }
  });

  test('of a text says the same each time, and every place is a line of that text', () => {
    fc.assert(
      fc.property(someTexts, (texts) => {
        const read = readDraft(texts);
        expect(readDraft(texts)).toEqual(read);
        if (!read.ok) return;
        const { left, links, segments } = read.value;
        const count = (text: string) => text.split(/\r\n|\n|\r/).length;
        for (const { from } of [...left, ...links, ...segments]) {
          if (from.text === 'recipeData') throw new Error('no such text was read');
          expect(from.line).toBeGreaterThanOrEqual(1);
          expect(from.line).toBeLessThanOrEqual(count(texts[from.text]));
        }
      }),
      { numRuns: 200 },
    );
  });

  // Work that grew with the square of the length would not end before the test's time is over.
  test('of lines made to be slow comes to an end', () => {
    const hostile = [
      '('.repeat(100_000),
      'a '.repeat(100_000),
      '1 - '.repeat(100_000),
      `${'<'.repeat(50_000)}p`,
      '0:00 '.repeat(60_000),
      `Ingredients${' '.repeat(200_000)}x`,
      '•'.repeat(200_000),
      '1 egg, '.repeat(50_000),
      '| a '.repeat(50_000),
      'https://'.repeat(40_000),
      Array.from({ length: 100_000 }, () => '-').join('\n'),
      Array.from({ length: 60_000 }, () => '1 egg').join('\n'),
      Array.from({ length: 60_000 }, () => 'EGGS').join('\n'),
    ];
    for (const description of hostile) {
      expect(draftOf({ description }).segments, description.slice(0, 12)).toBeInstanceOf(Array);
    }
  });
});
