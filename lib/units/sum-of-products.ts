import type { Interval } from '#lib/units/interval';

/**
 * Sums of products of uncertain inputs: the algebra under every figure.
 *
 * An input (a printed digit, a scale reading, a serving's weight) is a source with an id and an interval.
 * The same id is one error wherever it occurs, so terms keep ids and not numbers. A term is
 * `coefficient × Π up ÷ Π down`; dividing by a source that is also multiplied cancels it exactly.
 */

/** Intervals of the sources that a sum refers to, by id. */
export type Sources = ReadonlyMap<string, Interval>;

export interface Term {
  readonly coefficient: number;
  readonly up: readonly string[];
  readonly down: readonly string[];
}

/** A constant: a term without sources. */
export function constant(coefficient: number): Term {
  return { coefficient, up: [], down: [] };
}

/** One source with a coefficient. `source('scale:1', 2)` is twice that reading. */
export function source(id: string, coefficient = 1): Term {
  return { coefficient, up: [id], down: [] };
}

/** Product of two sums, with common factors cancelled and like terms collected. */
export function multiply(a: readonly Term[], b: readonly Term[]): Term[] {
  return collect(
    a.flatMap((x) =>
      b.map((y) =>
        cancel(x.coefficient * y.coefficient, [...x.up, ...y.up], [...x.down, ...y.down]),
      ),
    ),
  );
}

/** A sum multiplied by an exact number, which may be negative. */
export function scale(terms: readonly Term[], factor: number): Term[] {
  return terms.map((term) => ({ ...term, coefficient: term.coefficient * factor }));
}

/** A sum divided by one source. */
export function divideBySource(terms: readonly Term[], id: string): Term[] {
  return collect(terms.map((term) => cancel(term.coefficient, term.up, [...term.down, id])));
}

/** Adds up terms with the same sources, so that shared errors meet before any bound is taken. */
export function collect(terms: readonly Term[]): Term[] {
  const byKey = new Map<string, Term>();
  for (const term of terms) {
    const key = `${term.up.join('|')}/${term.down.join('|')}`;
    const known = byKey.get(key);
    byKey.set(key, known ? { ...known, coefficient: known.coefficient + term.coefficient } : term);
  }
  return [...byKey.values()].filter((term) => term.coefficient !== 0);
}

/** Ids of the sources in a sum, sorted. */
export function sourceIds(terms: readonly Term[]): string[] {
  return [...new Set(terms.flatMap((term) => [...term.up, ...term.down]))].sort();
}

/** The sum where each source stands at the given point; throws on a source that has no point. */
export function evaluate(terms: readonly Term[], at: ReadonlyMap<string, number>): number {
  let sum = 0;
  for (const term of terms) sum += productWithout(term, at, null);
  return sum;
}

function cancel(coefficient: number, up: readonly string[], down: readonly string[]): Term {
  const left = [...down];
  const kept: string[] = [];
  for (const id of up) {
    const index = left.indexOf(id);
    if (index >= 0) left.splice(index, 1);
    else kept.push(id);
  }
  return { coefficient, up: kept.sort(), down: left.sort() };
}

function pointOf(at: ReadonlyMap<string, number>, id: string): number {
  const value = at.get(id);
  if (value === undefined) throw new Error(`source without an interval: ${id}`);
  return value;
}

/** The term's product with one occurrence of a source left out of the numerator. */
function productWithout(term: Term, at: ReadonlyMap<string, number>, left: string | null): number {
  let product = term.coefficient;
  let skipped = left === null;
  for (const id of term.up) {
    if (!skipped && id === left) skipped = true;
    else product *= pointOf(at, id);
  }
  for (const id of term.down) product /= pointOf(at, id);
  return product;
}

function occurrences(ids: readonly string[], id: string): number {
  return ids.filter((other) => other === id).length;
}

/** First derivative of one term by one source at a point. */
function termSlope(term: Term, at: ReadonlyMap<string, number>, id: string): number {
  const up = occurrences(term.up, id);
  const down = occurrences(term.down, id);
  let slope = 0;
  if (up > 0) slope += up * productWithout(term, at, id);
  if (down > 0) slope -= (down * productWithout(term, at, null)) / pointOf(at, id);
  return slope;
}

/** First derivatives of a sum by each of its sources at a point. */
export function slopes(
  terms: readonly Term[],
  at: ReadonlyMap<string, number>,
): Map<string, number> {
  const result = new Map<string, number>();
  for (const term of terms) {
    for (const id of new Set([...term.up, ...term.down])) {
      result.set(id, (result.get(id) ?? 0) + termSlope(term, at, id));
    }
  }
  return result;
}

/** Mixed second derivatives of a sum, by pairs of distinct sources, at a point. */
export function mixedSlopes(
  terms: readonly Term[],
  at: ReadonlyMap<string, number>,
): { readonly a: string; readonly b: string; readonly slope: number }[] {
  const byPair = new Map<string, { a: string; b: string; slope: number }>();
  for (const term of terms) {
    for (const a of new Set(term.up)) {
      const rest = removeOne(term, a);
      for (const b of new Set([...rest.up, ...rest.down])) {
        if (b <= a && (term.up.includes(b) || b === a)) continue;
        const slope = termSlope(rest, at, b) * occurrences(term.up, a);
        const key = a < b ? `${a}|${b}` : `${b}|${a}`;
        const known = byPair.get(key);
        if (known) known.slope += slope;
        else byPair.set(key, { a, b, slope });
      }
    }
  }
  return [...byPair.values()];
}

function removeOne(term: Term, id: string): Term {
  const index = term.up.indexOf(id);
  return { ...term, up: term.up.filter((_, position) => position !== index) };
}
