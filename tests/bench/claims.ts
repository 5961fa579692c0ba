import { readFileSync } from 'node:fs';
import { readStatements } from '#lib/claims/read-statements';
import type { TextContext } from '#lib/claims/statement';
import { ms, timed } from './timing';

/** Words of a transcript of two hours at the usual rate, and how often each is timed: the least is kept. */
const WORDS = 20_000;
const REPEATS = 5;

const CONTEXT: TextContext = {
  form: 'captions',
  dishes: ['Sheet-pan lemon chicken', 'Smoky bean chili'],
  dish: 'Smoky bean chili',
  ingredients: ['black bean', 'kidney bean', 'onion', 'olive oil'],
};

/** The spoken texts of the open set, over and over, in lines of seven words as captions have them. */
function transcript(words: number): string {
  const url = new URL('../claims/statements-open.json', import.meta.url);
  const { texts } = JSON.parse(readFileSync(url, 'utf8')) as {
    texts: { form: string; text: string }[];
  };
  const spoken = texts
    .filter(({ form }) => form === 'captions')
    .flatMap(({ text }) => text.split(/\s+/));
  const lines: string[] = [];
  for (let at = 0; at < words; at += 7) {
    lines.push(
      Array.from(
        { length: Math.min(7, words - at) },
        (_, more) => spoken[(at + more) % spoken.length],
      ).join(' '),
    );
  }
  return lines.join('\n');
}

/** All that a bare tokeniser does: words and numbers with their places. */
function bareTokens(text: string): number {
  let count = 0;
  for (const match of text.matchAll(/\p{L}+|\d+|\S/gu)) count += match.index >= 0 ? 1 : 0;
  return count;
}

async function least(work: () => number): Promise<{ readonly ms: number; readonly found: number }> {
  let best = Infinity;
  let found = 0;
  for (let repeat = 0; repeat < REPEATS; repeat += 1) {
    const { ms: took, value } = await timed(work);
    best = Math.min(best, took);
    found = value;
  }
  return { ms: best, found };
}

/** Times the reading of transcripts beside a bare tokeniser, of 1, 10 and 100 times 2,000 words, and of two hours. */
export async function run(): Promise<void> {
  const rows: Record<string, Record<string, string | number>> = {};
  readStatements(transcript(2000), CONTEXT);
  for (const words of [2000, WORDS, 200_000]) {
    const text = transcript(words);
    const tokens = await least(() => bareTokens(text));
    const read = await least(() => readStatements(text, CONTEXT).length);
    rows[`${words} words`] = {
      'bare tokens ms': ms(tokens.ms),
      'statements ms': ms(read.ms),
      'µs a word': ms((read.ms * 1000) / words),
      statements: read.found,
    };
  }
  console.table(rows);
}
