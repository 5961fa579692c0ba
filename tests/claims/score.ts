import { ENGLISH } from '#lib/claims/english/english';
import { sameFood, stemsOf } from '#lib/claims/words/foods';
import { readStatements } from '#lib/claims/read-statements';
import type { Statement } from '#lib/claims/statement';
import { places, type LabelledStatement, type LabelledText } from './labelled';

/** How many of what was asked for were found, and how many of what was read were right. */
export interface Count {
  asked: number;
  read: number;
  found: number;
  right: number;
}

export interface Scores {
  readonly all: Count;
  readonly byTag: ReadonlyMap<string, Count>;
  readonly byKind: ReadonlyMap<string, Count>;
  /** Texts with what was missed and what was read amiss. */
  readonly failures: readonly string[];
}

type Loose = Readonly<Record<string, unknown>>;

const near = (a: unknown, b: unknown) =>
  typeof a === 'number' && typeof b === 'number'
    ? Math.abs(a - b) <= 1e-4 * Math.max(1, Math.abs(b))
    : a === b;

/** Foods agree if the words of one are all in the other. */
function sameName(a: unknown, b: unknown): boolean {
  if (a === undefined || b === undefined) return a === b;
  return sameFood(stemsOf(String(a), ENGLISH), stemsOf(String(b), ENGLISH));
}

/**
 * Whether a statement was read right: kind, what it counts, low and high, unit, hedge, scope and dish are the same,
 * foods agree in their words, and the stretch of the text overlaps with that of the label.
 */
function same(label: LabelledStatement, read: Statement): boolean {
  const [want, got] = [label as Loose, read as unknown as Loose];
  const alike = ['kind', 'nutrient', 'unit', 'hedge', 'scope', 'against', 'claim', 'fan', 'dish'];
  return (
    alike.every((key) => want[key] === got[key]) &&
    near(got['low'], want['low']) &&
    near(got['high'], want['high']) &&
    sameName(want['food'], got['food'])
  );
}

const brief = (statement: Loose) =>
  [
    'words',
    'kind',
    'nutrient',
    'claim',
    'low',
    'high',
    'unit',
    'hedge',
    'scope',
    'against',
    'food',
    'dish',
    'fan',
  ]
    .filter((key) => statement[key] !== undefined && statement[key] !== 'none')
    .map((key) => (key === 'words' ? JSON.stringify(statement[key]) : String(statement[key])))
    .join(' ');

/** Reads each text and counts, in all and by tag and kind, what was found of the labels and right of what was read. */
export function score(texts: readonly LabelledText[]): Scores {
  const all = { asked: 0, read: 0, found: 0, right: 0 };
  const byTag = new Map<string, Count>();
  const byKind = new Map<string, Count>();
  const failures: string[] = [];
  for (const text of texts) {
    // The sets were labelled before words such as 'nut free' were statements: of those they ask for none.
    const read = readStatements(text.text, { form: text.form, ...text.context }).filter(
      ({ kind }) => kind !== 'freeFrom',
    );
    const stretches = places(text);
    const left = new Set(read);
    const missed: LabelledStatement[] = [];
    text.statements.forEach((label, index) => {
      const place = stretches[index];
      const hit = [...left].find(
        (one) => place && one.start < place.end && one.end > place.start && same(label, one),
      );
      for (const count of counts(label.kind, label.tags)) {
        count.asked += 1;
        if (hit) count.found += 1;
      }
      if (hit) {
        left.delete(hit);
        for (const count of counts(hit.kind, hit.tags)) count.right += 1;
      } else missed.push(label);
    });
    for (const one of read) for (const count of counts(one.kind, one.tags)) count.read += 1;
    if (missed.length > 0 || left.size > 0) {
      failures.push(
        [
          `${text.id}: ${text.text}`,
          ...missed.map((label) => `  missed ${brief(label as Loose)}`),
          ...[...left].map((one) => `  amiss  ${brief(one as unknown as Loose)}`),
        ].join('\n'),
      );
    }
  }
  return { all, byTag, byKind, failures };

  function counts(kind: string, tags: readonly string[]): Count[] {
    return [all, ...tags.map((tag) => entry(byTag, tag)), entry(byKind, kind)];
  }
}

function entry(map: Map<string, Count>, key: string): Count {
  let count = map.get(key);
  if (!count) map.set(key, (count = { asked: 0, read: 0, found: 0, right: 0 }));
  return count;
}

/**
 * Wilson's interval of a share at 95 % (E. B. Wilson, Journal of the American Statistical Association 22, 1927).
 * @example wilson(95, 100) // [0.888, 0.978], rounded
 */
export function wilson(hits: number, of: number): readonly [low: number, high: number] {
  if (of === 0) return [0, 1];
  const z = 1.959964;
  const share = hits / of;
  const middle = share + z ** 2 / (2 * of);
  const half = z * Math.sqrt((share * (1 - share)) / of + z ** 2 / (4 * of ** 2));
  const scale = 1 + z ** 2 / of;
  return [(middle - half) / scale, (middle + half) / scale];
}

/** A table of precision and recall with their intervals, one line for each tag and kind. */
export function report({ all, byTag, byKind }: Scores): string {
  const percent = (share: number) => `${(100 * share).toFixed(1)}`;
  const cell = (hits: number, of: number) => {
    const [low, high] = wilson(hits, of);
    return of === 0
      ? '–'
      : `${hits} of ${of}, ${percent(hits / of)} % (${percent(low)} to ${percent(high)})`;
  };
  const row = (name: string, { asked, read, found, right }: Count) =>
    `${name.padEnd(18)} recall ${cell(found, asked).padEnd(38)} precision ${cell(right, read)}`;
  const rows = (map: ReadonlyMap<string, Count>) =>
    [...map].sort(([a], [b]) => a.localeCompare(b)).map(([name, count]) => row(name, count));
  return [row('all', all), ...rows(byTag), ...rows(byKind)].join('\n');
}
