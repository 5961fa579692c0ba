import type { Composition } from '#lib/figures/compiled/composition';

/** Numbers that a sum keeps of each nutrient: value, low, high, middle; the variance stands apart. */
export const SUM = 4;
/** Numbers that are kept of the amounts of a food: those of a factor, then squares of errors: all, its own. */
export const AMOUNT = 7;
/** Numbers that are kept of a source: variance, high, value, and the way it moves amounts of foods. */
export const SOURCE = 4;
/** Ways beside 1, they rise with it, and −1, they fall: some rise and some fall; no food has it. */
export const BOTH = 2;
export const NEITHER = 3;
/**
 * Numbers that say what meets in a joint: food, source, second source of a pair, 1 where they meet other foods too,
 * and the place of the source or pair among all.
 */
export const JOINT = 5;

/**
 * Which foods and which amount sources meet in a sum. A joint is an amount source with a food that it moves the sum
 * of; a pair is two amount sources that are multiplied, with such a food. No number of the sum stands in it.
 */
export interface Tables {
  readonly compositions: readonly Composition[];
  /** Places of those that are of single nutrients. */
  readonly singles: readonly number[];
  /** The nutrients that these are of. */
  readonly specials: readonly number[];
  /** How many amount sources there are. */
  readonly sources: number;
  /** `JOINT` numbers of each joint, and of each pair. */
  readonly joints: Int32Array;
  readonly pairs: Int32Array;
  /** The joints of each source that meets several foods; pairs likewise. */
  readonly metJoints: readonly Met[];
  readonly metPairs: readonly Met[];
  /** By nutrient: 1 where the sum must be taken by terms. */
  readonly byTerms: Uint8Array;
  readonly at: Layout;
}

/** The joints of one source, or of one pair, with the foods that it meets. */
export interface Met {
  readonly source: number;
  readonly other: number;
  readonly places: readonly number[];
  readonly middles: readonly Float64Array[];
}

/** Where in the row of a sum its numbers begin; by nutrient, `SUM` of them, they begin at 0. */
export interface Layout {
  /** By nutrient: variance. */
  readonly variance: number;
  /** By nutrient: how much the sum of magnitudes is more than the upper bound. */
  readonly excess: number;
  /** By nutrient: room to work in. */
  readonly room: number;
  /** By food: `AMOUNT` numbers of what its amounts come to; at the end as many zeros, of nothing. */
  readonly amounts: number;
  /** By joint: first derivative of a food's amounts by a source, in the middles. */
  readonly joints: number;
  /** By pair: the mixed derivative. */
  readonly pairs: number;
  /** By source: `SOURCE` numbers. */
  readonly sources: number;
  readonly end: number;
}

interface Place {
  readonly place: number;
  readonly composition: number;
  readonly source: number;
  readonly other: number;
}

/** Collects what meets in a sum; every food, source, joint and pair has one place, the first it is asked for. */
export class TableMaker {
  private readonly compositions = new Map<Composition, number>();
  private readonly ids = new Map<string, number>();
  private readonly joints = new Map<number, Place[]>();
  private readonly pairs = new Map<number, Place[]>();
  private jointCount = 0;
  private pairCount = 0;

  /** `byTerms` is what cannot be taken from numbers, by nutrient. */
  constructor(private readonly byTerms: Uint8Array) {}

  composition(of: Composition): number {
    return placeOf(this.compositions, of);
  }

  source(id: string): number {
    return placeOf(this.ids, id);
  }

  joint(composition: number, source: number): number {
    const next = this.jointCount;
    const place = meet(this.joints, { place: next, composition, source, other: source });
    if (place === next) this.jointCount += 1;
    return place;
  }

  pair(composition: number, a: number, b: number): number {
    const next = this.pairCount;
    const [source, other] = a < b ? [a, b] : [b, a];
    const place = meet(this.pairs, { place: next, composition, source, other });
    if (place === next) this.pairCount += 1;
    return place;
  }

  tables(): Tables {
    const compositions = [...this.compositions.keys()];
    // Two foods of one version share its errors without sharing their compositions: terms know that.
    const versions = new Set(compositions.map(({ versionId }) => versionId));
    const byTerms = this.byTerms.slice();
    if (versions.size < compositions.length) byTerms.fill(1);
    const only = compositions.map((each) => each.only);
    const joints = metOf(this.joints, this.jointCount, compositions);
    const pairs = metOf(this.pairs, this.pairCount, compositions);
    const counts = { foods: compositions.length, sources: this.ids.size };
    return {
      compositions,
      singles: only.flatMap((place, index) => (place === null ? [] : [index])),
      specials: [...new Set(only.filter((place) => place !== null))],
      sources: this.ids.size,
      joints: joints.table,
      pairs: pairs.table,
      metJoints: joints.met,
      metPairs: pairs.met,
      byTerms,
      at: layoutOf(byTerms.length, this.jointCount, this.pairCount, counts),
    };
  }
}

function placeOf<K>(places: Map<K, number>, key: K): number {
  const known = places.get(key);
  if (known !== undefined) return known;
  places.set(key, places.size);
  return places.size - 1;
}

/** Places are kept by source; few foods meet the same one. */
function meet(places: Map<number, Place[]>, asked: Place): number {
  const known = places.get(asked.source);
  if (!known) {
    places.set(asked.source, [asked]);
    return asked.place;
  }
  for (const { place, composition, other } of known) {
    if (composition === asked.composition && other === asked.other) return place;
  }
  known.push(asked);
  return asked.place;
}

function metOf(
  bySource: ReadonlyMap<number, readonly Place[]>,
  count: number,
  compositions: readonly Composition[],
): { table: Int32Array; met: Met[] } {
  const table = new Int32Array(JOINT * count);
  const met: Met[] = [];
  let kinds = 0;
  for (const [source, places] of bySource) {
    for (const other of new Set(places.map((each) => each.other))) {
      const same = places.length > 1 ? places.filter((each) => each.other === other) : places;
      const foods = same.filter(({ composition }) => compositions[composition]?.only === null);
      const shared = foods.length > 1;
      for (const { place, composition } of same) {
        table.set([composition, source, other, shared ? 1 : 0, kinds], JOINT * place);
      }
      kinds += 1;
      if (!shared) continue;
      met.push({
        source,
        other,
        places: foods.map(({ place }) => place),
        middles: foods.flatMap(({ composition }) => compositions[composition]?.middles ?? []),
      });
    }
  }
  return { table, met };
}

function layoutOf(
  nutrients: number,
  joints: number,
  pairs: number,
  { foods, sources }: { readonly foods: number; readonly sources: number },
): Layout {
  const variance = SUM * nutrients;
  const excess = variance + nutrients;
  const room = excess + nutrients;
  const amounts = room + nutrients;
  const jointsAt = amounts + AMOUNT * (foods + 1);
  const pairsAt = jointsAt + joints;
  const sourcesAt = pairsAt + pairs;
  const end = sourcesAt + SOURCE * sources;
  return {
    variance,
    excess,
    room,
    amounts,
    joints: jointsAt,
    pairs: pairsAt,
    sources: sourcesAt,
    end,
  };
}
