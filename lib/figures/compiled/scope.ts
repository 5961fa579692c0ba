import { NOTHING, type Parts } from '#lib/figures/parts';
import { exactly } from '#lib/units/interval';
import type { Sources, Term } from '#lib/units/sum-of-products';

/** A share of a sum, as the rules take it: multiplied or divided by what may itself be uncertain. */
export type Share = (parts: Parts) => Parts;

/** A share in numbers. */
export type Scope =
  /** Nothing of the sum is in it: all of its figures are these parts. */
  | { readonly kind: 'without'; readonly parts: Parts }
  /** An exact number of times the sum. */
  | { readonly kind: 'times'; readonly times: number }
  /** So many times the sum times the terms; equal shapes, equal terms; equal keys, equal intervals as well. */
  | {
      readonly kind: 'by';
      readonly times: number;
      readonly terms: readonly Term[];
      readonly sources: Sources;
      readonly shape: string;
      readonly key: string;
    }
  /** None of these: the share must be asked of the terms. */
  | { readonly kind: 'byTerms' };

const PROBE = 'probe';
const ONE: Parts = {
  ...NOTHING,
  terms: [{ coefficient: 1, up: [PROBE], down: [] }],
  sources: new Map([[PROBE, exactly(1)]]),
};

/**
 * What a share does, found by taking it of one of something.
 * @example scopeOf((parts) => scaleParts(parts, 1 / 4)) // { kind: 'times', times: 0.25 }
 */
export function scopeOf(share: Share): Scope {
  const known = kept.get(share);
  if (known) return known;
  const scope = probe(share);
  kept.set(share, scope);
  return scope;
}

const kept = new WeakMap<Share, Scope>();

function probe(share: Share): Scope {
  const parts = share(ONE);
  const { above, below, open, provisional, sources } = parts;
  if (parts.terms.length === 0) return { kind: 'without', parts };
  const other = above.length + below.length + open.length + provisional.length;
  const terms = parts.terms.map(withoutProbe);
  if (other > 0 || terms.some((term) => term === null)) return { kind: 'byTerms' };
  const [first] = terms;
  if (terms.length === 1 && first && first.coefficient > 0) {
    const { coefficient: times, up, down } = first;
    if (up.length + down.length === 0) return { kind: 'times', times };
    return sharedBy(times, [{ ...first, coefficient: 1 }], sources);
  }
  return sharedBy(
    1,
    terms.filter((term) => term !== null),
    sources,
  );
}

function withoutProbe(term: Term): Term | null {
  const up = term.up.filter((id) => id !== PROBE);
  const once = up.length === term.up.length - 1 && !term.down.includes(PROBE);
  return once ? { ...term, up } : null;
}

function sharedBy(times: number, terms: readonly Term[], sources: Sources): Scope {
  let shape = '';
  for (const { coefficient, up, down } of terms) {
    shape += `${coefficient}*${up.join('*')}/${down.join('/')};`;
  }
  let key = shape;
  for (const [id, { low, value, high }] of sources) {
    if (id !== PROBE) key += `${id}:${low}:${value}:${high};`;
  }
  return { kind: 'by', times, terms, sources, shape, key: oneOf(key) };
}

/** Shares of an episode's dishes have a key each; beyond this many they are forgotten. */
const MOST = 1024;
const keys = new Map<string, string>();

/** The same text as the same string each time, so that comparing it needs no look at its letters. */
function oneOf(key: string): string {
  const known = keys.get(key);
  if (known !== undefined) return known;
  if (keys.size >= MOST) keys.clear();
  keys.set(key, key);
  return key;
}
