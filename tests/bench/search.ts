import { readFileSync } from 'node:fs';
import { buildSearchIndex, searchFoods } from '#lib/foods/search-index';
import { loadSr28 } from '#seed/load-sr28';
import { loadSynonyms } from '#seed/load-synonyms';
import { KITCHEN_QUERIES } from '../foods/kitchen-queries';
import { prepareScan, scanFoods } from '../foods/plain-scan';
import { ms, quantile, timed } from './timing';

const TAKE = 12;
/** Keystrokes per query that are timed: the last ones, where most words stand. */
const KEYSTROKES = 2;
/** Each is timed this often and the least is kept: what other programs take is not the search's. */
const REPEATS = 3;

/**
 * Times the search over all reference foods while whole queries are typed, beside a plain scan with the same
 * scoring, turn by turn in one run, and checks that both give the same foods.
 */
export async function run(): Promise<void> {
  const entries = loadSr28().map(({ id, name, section, version }) => ({
    id,
    name,
    section,
    sourceNo: version.sourceNo,
  }));
  const synonyms = loadSynonyms();
  const built = await timed(() => buildSearchIndex(entries, synonyms));
  const index = built.value;
  const scan = prepareScan(index);

  const blind = JSON.parse(
    readFileSync(new URL('../foods/blind-queries.json', import.meta.url), 'utf8'),
  ) as { queries: { query: string }[] };
  const whole = [
    ...KITCHEN_QUERIES.map(([query]) => query),
    ...blind.queries.map(({ query }) => query),
  ];
  const typed = whole.flatMap((query) =>
    Array.from({ length: KEYSTROKES }, (_, left) => query.slice(0, query.length - left)),
  );

  for (const query of typed) searchFoods(index, query, { take: TAKE });
  const ours: number[] = [];
  const plain: number[] = [];
  let different = 0;
  for (const query of typed) {
    const fast: number[] = [];
    const slow: number[] = [];
    for (let repeat = 0; repeat < REPEATS; repeat += 1) {
      const found = await timed(() => searchFoods(index, query, { take: TAKE }));
      const scanned = await timed(() => scanFoods(scan, query, TAKE));
      fast.push(found.ms);
      slow.push(scanned.ms);
      const ids = (hits: typeof found.value) => hits.map(({ entry }) => entry.id).join();
      if (ids(found.value) !== ids(scanned.value)) different += 1;
    }
    ours.push(Math.min(...fast));
    plain.push(Math.min(...slow));
  }

  console.info(
    `${entries.length} foods, ${index.stems.size} words, index built in ${ms(built.ms)} ms; ` +
      `${typed.length} keystrokes of ${whole.length} queries, ${TAKE} hits each, least of ${REPEATS}`,
  );
  console.table({
    'search (index)': { 'median ms': ms(quantile(ours, 0.5)), 'p95 ms': ms(quantile(ours, 0.95)) },
    'plain scan': { 'median ms': ms(quantile(plain, 0.5)), 'p95 ms': ms(quantile(plain, 0.95)) },
  });
  console.info(`answers that differ between the two: ${different}`);
}
