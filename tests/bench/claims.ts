import { readEdit } from '#lib/claims/read-edit';
import { readStatements } from '#lib/claims/read-statements';
import type { TextContext } from '#lib/claims/statement';
import { madeFacts, spokenEpisode, transcriptLines } from './claims-made';
import { ms, quantile } from './timing';

/** Words of a tenth of two hours’ talk at the usual rate, or so, of all of it, and of ten times that. */
const SIZES = [2000, 20_000, 200_000];
/**
 * How often each is timed after the first time, the longest text less often. Node compiles what runs often while it
 * runs, here for about ten times.
 */
const REPEATS = 20;
const REPEATS_OF_LONGEST = 1;

const CONTEXT: TextContext = {
  form: 'captions',
  dishes: ['Sheet-pan lemon chicken', 'Smoky bean chili'],
  dish: 'Smoky bean chili',
  ingredients: ['black bean', 'kidney bean', 'onion', 'olive oil'],
};

/** All that a bare tokeniser does: words and numbers with their places. */
function bareTokens(text: string): number {
  let count = 0;
  for (const match of text.matchAll(/\p{L}+|\d+|\S/gu)) count += match.index >= 0 ? 1 : 0;
  return count;
}

interface Taken {
  /** By the clock. */
  readonly ms: number;
  /** Of the processor: with what Node compiles and clears away beside the work. */
  readonly busy: number;
}

interface Timed {
  readonly first: Taken;
  readonly settled: Taken;
  readonly found: number;
}

/** The first time, and the median of the last half of the next, each time on what nobody has looked at. */
function timed<T>(repeats: number, make: () => T, work: (of: T) => number): Timed {
  const times: Taken[] = [];
  let found = 0;
  for (let repeat = 0; repeat <= repeats; repeat += 1) {
    const made = make();
    const begun = performance.now();
    const start = process.cpuUsage();
    found = work(made);
    const { user, system } = process.cpuUsage(start);
    times.push({ ms: performance.now() - begun, busy: (user + system) / 1000 });
  }
  const [first = { ms: NaN, busy: NaN }, ...next] = times;
  const last = next.slice(Math.floor(next.length / 2));
  const median = (of: keyof Taken) =>
    quantile(
      last.map((each) => each[of]),
      0.5,
    );
  return { first, settled: { ms: median('ms'), busy: median('busy') }, found };
}

/**
 * Times transcripts of 2,000, 20,000 and 200,000 words: a bare tokeniser, the reading of their statements, and these read
 * and judged against the demo’s dishes with a log and prices.
 */
export function run(): void {
  for (const words of SIZES) {
    const text = transcriptLines(words).join('\n');
    const repeats = words > 100_000 ? REPEATS_OF_LONGEST : REPEATS;
    const tokens = timed(REPEATS, () => text, bareTokens);
    const read = timed(
      repeats,
      () => text,
      (each) => readStatements(each, CONTEXT).length,
    );
    const judged = timed(
      repeats,
      () => spokenEpisode(words),
      (file) => readEdit(file, madeFacts(file)).judged.length,
    );
    const row = {
      'bare tokens ms': ms(tokens.settled.ms),
      'read ms': ms(read.settled.ms),
      'read and judged ms': ms(judged.settled.ms),
      'of the processor': ms(judged.settled.busy),
      'the first time': ms(judged.first.ms),
      'µs a word': ms((judged.settled.ms * 1000) / words),
      'times bare': (judged.settled.ms / tokens.settled.ms).toFixed(0),
      judged: judged.found,
    };
    console.table({ [`${words} words`]: row });
  }
}
