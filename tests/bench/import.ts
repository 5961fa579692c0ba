import { readSr28 } from '#lib/foods/read-sr28';
import { loadSr28, readSr28Texts } from '#seed/load-sr28';
import { ms, quantile, timed } from './timing';

const ROUNDS = 5;

/** Times the reading of SR28: the files, the parsing, and the whole with measures and yields merged. */
export async function run(): Promise<void> {
  const files: number[] = [];
  const parse: number[] = [];
  const all: number[] = [];
  let foods = 0;
  for (let round = 0; round < ROUNDS; round += 1) {
    const texts = await timed(() => readSr28Texts());
    const parsed = await timed(() => readSr28(texts.value));
    const merged = await timed(() => loadSr28());
    files.push(texts.ms);
    parse.push(parsed.ms);
    all.push(merged.ms);
    foods = merged.value.length;
  }
  const row = (samples: readonly number[]) => ({
    'first ms': ms(samples[0] ?? NaN),
    'median ms': ms(quantile(samples, 0.5)),
  });
  console.info(`${foods} foods, ${ROUNDS} rounds`);
  console.table({
    'read files': row(files),
    'parse texts': row(parse),
    'read, parse, merge measures and yields': row(all),
  });
}
