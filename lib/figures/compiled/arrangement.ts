import type { Placed } from '#lib/figures/compiled/add-foods';
import type { Composition } from '#lib/figures/compiled/composition';
import { holdingIn, type Holding } from '#lib/figures/compiled/holding';
import { meetingIn, type Meeting } from '#lib/figures/compiled/meeting';
import { squaresIn, type Squares } from '#lib/figures/compiled/squares';
import type { Product } from '#lib/figures/compiled/summand';
import { JOINT, TableMaker, type Tables } from '#lib/figures/compiled/tables';

/** How ingredients meet in a sum. */
export interface Arrangement extends Tables {
  readonly entries: readonly Product[];
  /** Ids of the amount sources. */
  readonly ids: readonly string[];
  /**
   * Where the numbers of each entry's factor go, in order: its sign; 1 for a food, 0 for an amount alone; place of its
   * food; how many sources, and of each the joint and the source; how many pairs, and of each the pair.
   */
  readonly route: Int32Array;
  /** The foods among the compositions, in threes: the last of these is filled up with one that nothing is had of. */
  readonly foods: readonly Placed[];
  readonly squares: Squares;
  /** Of each of `specials`, what its variance comes from. */
  readonly meetings: readonly Meeting[];
  /** Of each of `specials`, the entries that hold it. */
  readonly holding: readonly Holding[];
  /** Where a food's sum of magnitudes is more than its upper bound: food, nutrient and by how much. */
  readonly excess: Float64Array;
}

/** Arranges products; `byTerms` is 1 for the nutrients that they are not all of. */
export function arrange(entries: readonly Product[], byTerms: Uint8Array): Arrangement {
  const maker = new TableMaker(byTerms);
  const ids: string[] = [];
  const route: number[] = [];
  for (const { factor, of, sign } of entries) {
    const composition = maker.composition(of);
    const sources = factor.ids.map((id) => maker.source(id));
    route.push(sign, of.only === null ? 1 : 0, composition, sources.length);
    sources.forEach((source, place) => {
      ids[source] = factor.ids[place] ?? '';
      route.push(maker.joint(composition, source), source);
    });
    route.push(factor.pairs.length);
    for (const { a, b } of factor.pairs) {
      route.push(maker.pair(composition, sources[a] ?? 0, sources[b] ?? 0));
    }
  }
  const tables = maker.tables();
  const excess = tables.compositions.flatMap((food, of) =>
    food.excess.flatMap(({ place, amount }) => [of, place, amount]),
  );
  const places = Int32Array.from(route);
  return {
    ...tables,
    foods: inThrees(tables.compositions),
    squares: squaresIn(tables),
    meetings: tables.specials.map((place) => meetingIn(place, tables)),
    holding: tables.specials.map((place) => holdingIn(place, entries, places, excess, ids.length)),
    excess: Float64Array.from(excess),
    entries,
    ids,
    route: places,
  };
}

function inThrees(compositions: readonly Composition[]): readonly Placed[] {
  const foods = compositions.flatMap(({ only, cells }, place) =>
    only === null ? [{ place, cells }] : [],
  );
  const nothing = foods.slice(0, 1).map(({ cells }) => ({ place: compositions.length, cells }));
  while (foods.length % 3 > 0) foods.push(...nothing);
  return foods;
}

/** Sums that are added together, with the place of each of their foods, sources, joints and pairs in the whole. */
export interface Together extends Tables {
  readonly parts: readonly Arrangement[];
  readonly squares: Squares;
  /** Of each of `specials`, what its variance comes from. */
  readonly meetings: readonly Meeting[];
  readonly places: readonly Places[];
}

export interface Places {
  readonly compositions: Int32Array;
  readonly sources: Int32Array;
  readonly joints: Int32Array;
  readonly pairs: Int32Array;
}

/** Arranges sums that are added together. */
export function arrangeTogether(parts: readonly Arrangement[], length: number): Together {
  const byTerms = Uint8Array.from({ length }, (_, place) =>
    parts.some((part) => part.byTerms[place]) ? 1 : 0,
  );
  const maker = new TableMaker(byTerms);
  const places = parts.map((part): Places => {
    const compositions = Int32Array.from(part.compositions, (each) => maker.composition(each));
    const sources = Int32Array.from(part.ids, (id) => maker.source(id));
    const placed = (table: Int32Array, of: (food: number, a: number, b: number) => number) =>
      Int32Array.from({ length: table.length / JOINT }, (_, place) => {
        const [composition, source, other] = table.subarray(JOINT * place, JOINT * place + 3);
        return of(
          compositions[composition ?? 0] ?? 0,
          sources[source ?? 0] ?? 0,
          sources[other ?? 0] ?? 0,
        );
      });
    return {
      compositions,
      sources,
      joints: placed(part.joints, (food, source) => maker.joint(food, source)),
      pairs: placed(part.pairs, (food, a, b) => maker.pair(food, a, b)),
    };
  });
  const tables = maker.tables();
  const meetings = tables.specials.map((place) => meetingIn(place, tables));
  return { ...tables, squares: squaresIn(tables), parts, places, meetings };
}
