import { readFileSync } from 'node:fs';
import { readIngredientList } from '#lib/episode/read-ingredient';
import { quantile, timed } from './timing';

/** Lines of one list, and how often each list is read. */
const LINES = 400;
const ROUNDS = 40;

/** What reading would be if words were amounts: split on blanks, a number, a unit, the rest. */
function splitOnBlanks(text: string): readonly { amount: number; unit: string; food: string }[] {
  return text.split('\n').map((line) => {
    const [amount = '', unit = '', ...food] = line.split(' ');
    return { amount: Number(amount), unit, food: food.join(' ') };
  });
}

/**
 * Times the reader of ingredient lists beside splitting the same lines on blanks, turn by turn in one run, and
 * one list of 10,000 lines, of which all but the first 400 come back unread.
 */
export async function run(): Promise<void> {
  const { lines } = JSON.parse(
    readFileSync(new URL('../episode/blind-ingredients.json', import.meta.url), 'utf8'),
  ) as { lines: { text: string }[] };
  const list = Array.from({ length: LINES }, (_, at) => lines[at % lines.length]?.text ?? '').join(
    '\n',
  );
  const ours: number[] = [];
  const plain: number[] = [];
  let read = 0;
  for (let round = 0; round < ROUNDS; round += 1) {
    const reading = await timed(() => readIngredientList(list, Infinity));
    const splitting = await timed(() => splitOnBlanks(list));
    read = reading.value.lines.length;
    if (splitting.value.length !== read) throw new Error('both must read every line');
    // The first rounds warm both up.
    if (round < ROUNDS / 4) continue;
    ours.push((1000 * read) / reading.ms);
    plain.push((1000 * read) / splitting.ms);
  }
  const long = Array.from({ length: 10_000 }, (_, at) => `${at} g oats`).join('\n');
  const pasted = await timed(() => readIngredientList(long));

  const perSecond = (samples: readonly number[], share: number) =>
    Math.round(quantile(samples, share));
  console.info(`lists of ${read} lines, ${ours.length} rounds; lines per second`);
  console.table({
    'ingredient reader': { median: perSecond(ours, 0.5), slowest: perSecond(ours, 0) },
    'split on blanks': { median: perSecond(plain, 0.5), slowest: perSecond(plain, 0) },
  });
  console.info(
    `10,000 lines pasted: ${pasted.ms.toFixed(0)} ms, ${pasted.value.lines.length} read, the rest returned`,
  );
}
