import { readDraft } from '#lib/draft/read-draft';
import { transcriptLines } from './claims-made';
import { ms, quantile, timed } from './timing';

/** Words of a tenth of two hours’ talk, of all of it, and of ten times that. */
const SIZES = [2000, 20_000, 200_000];
const REPEATS = 5;

/** Milliseconds of the middle one of some runs. */
async function middle(work: () => unknown): Promise<number> {
  const times: number[] = [];
  for (let repeat = 0; repeat < REPEATS; repeat += 1) times.push((await timed(work)).ms);
  return quantile(times, 0.5);
}

/** Times the draft of an episode from captions of 2,000, 20,000 and 200,000 words, beside cutting them into lines. */
export async function run(): Promise<void> {
  for (const words of SIZES) {
    const lines = transcriptLines(words);
    const captions = lines.map((line, at) => `[${Math.floor(at / 60)}:${two(at % 60)}] ${line}`);
    const text = captions.join('\n');
    const bare = await middle(() => text.split('\n').map((line) => line.split(/\s+/)));
    const draft = await middle(() => readDraft({ captions: text }));
    console.table({
      [`${words} words`]: {
        'cut into words ms': ms(bare),
        'draft ms': ms(draft),
        'µs a word': ms((draft * 1000) / words),
      },
    });
  }
}

const two = (number: number) => String(number).padStart(2, '0');
