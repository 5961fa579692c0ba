import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseEpisodeFile } from '#lib/episode/file';
import { episodeFigures } from '#lib/figures/episode-figures';
import { takeLock } from '#lib/lock/numbers-lock';
import { description } from '#lib/publish/description';
import { outputs } from '#lib/sheet/outputs';
import { planDay } from '#lib/shoot/plan-day';
import { shoppingList } from '#lib/shopping/shopping-list';
import { ms, quantile, timed } from './timing';

/** What a person takes for 'at once' on a command line (common practice, no source). */
const LIMIT_MS = 500;
const ROUNDS = 20;

/**
 * All outputs of the demo's file by part and whole, beside a limit for the whole and a peer for the floor:
 * plain JSON reading of the same file, which nothing that starts from it can beat.
 */
export async function run(): Promise<void> {
  const text = readFileSync(
    fileURLToPath(new URL('../../seed/demo.episode.json', import.meta.url)),
    'utf8',
  );
  const parsed = parseEpisodeFile(text);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  const file = parsed.value;
  const figures = episodeFigures(file);
  const parts: Record<string, () => unknown> = {
    'peer: JSON.parse of the file': () => JSON.parse(text) as unknown,
    'parse and check the file': () => parseEpisodeFile(text),
    'figures with bounds': () => episodeFigures(file),
    'numbers lock': () => takeLock(file, figures),
    'shooting order': () => planDay(file, { seed: 1 }),
    'shopping list': () => shoppingList(file),
    description: () => description(file, figures),
    'all seven outputs': () => outputs(file, { now: file.savedAt, seed: 1 }),
  };
  const table: Record<string, { 'first ms': string; 'median ms': string; 'p95 ms': string }> = {};
  let whole = 0;
  for (const [name, work] of Object.entries(parts)) {
    const samples: number[] = [];
    for (let round = 0; round < ROUNDS; round += 1) samples.push((await timed(work)).ms);
    whole = quantile(samples, 0.95);
    table[name] = {
      'first ms': ms(samples[0] ?? NaN),
      'median ms': ms(quantile(samples, 0.5)),
      'p95 ms': ms(whole),
    };
  }
  console.table(table);
  const verdict = whole <= LIMIT_MS ? 'within' : 'OVER';
  console.info(`all outputs, p95 ${ms(whole)} ms: ${verdict} the limit of ${LIMIT_MS} ms`);
}
