import { areEqual } from '#lib/figures/compiled/alike';
import type { LineLack, Summand } from '#lib/figures/compiled/summand';
import type { MissingPart, ProvisionalPart } from '#lib/figures/figure';
import { oncePerLine } from '#lib/figures/parts';

/** What a sum lacks of one nutrient, in the order of its summands, and how a figure names it. */
export interface Lacking extends LineLack {
  readonly missing: readonly MissingPart[];
}

/** What a sum lacks, by nutrient, and who waits in it. */
export interface Lists {
  readonly lacking: readonly Lacking[];
  /** By nutrient, what its figure names; and which of its sides are not bounded, `NO_LOW` and `NO_HIGH` together. */
  readonly missing: readonly (readonly MissingPart[])[];
  readonly unbounded: Uint8Array;
  readonly provisional: readonly ProvisionalPart[];
}

export const NO_LOW = 1;
export const NO_HIGH = 2;

const NO_PARTS: readonly MissingPart[] = [];
const NOTHING_LACKS: Lacking = {
  above: NO_PARTS,
  below: NO_PARTS,
  open: NO_PARTS,
  missing: NO_PARTS,
};

type Listed = Pick<Summand, 'lacking' | 'provisional'>;

/** Lists of a sum; `length` is the number of nutrients of the panel. */
export function listsOf(summands: readonly Listed[], length: number): Lists {
  const all = new Array<LineLack[] | undefined>(length).fill(undefined);
  const waiting: ProvisionalPart[] = [];
  for (const { lacking, provisional } of summands) {
    for (const [place, lack] of lacking) {
      const known = all[place];
      if (known) known.push(lack);
      else all[place] = [lack];
    }
    for (const part of provisional) waiting.push(part);
  }
  return listsFrom(all, oncePerLine(waiting));
}

/** Lists of several sums together, in their order. */
export function listsTogether(lists: readonly Lists[], length: number): Lists {
  const all = new Array<LineLack[] | undefined>(length).fill(undefined);
  for (const { lacking } of lists) {
    for (let place = 0; place < length; place += 1) {
      const lack = lacking[place];
      if (!lack || lack === NOTHING_LACKS) continue;
      const known = all[place];
      if (known) known.push(lack);
      else all[place] = [lack];
    }
  }
  return listsFrom(all, oncePerLine(lists.flatMap(({ provisional }) => provisional)));
}

function listsFrom(
  all: readonly (readonly LineLack[] | undefined)[],
  provisional: readonly ProvisionalPart[],
): Lists {
  const lacking: Lacking[] = [];
  const missing: (readonly MissingPart[])[] = [];
  const unbounded = new Uint8Array(all.length);
  for (let place = 0; place < all.length; place += 1) {
    const lacks = together(all[place]);
    lacking.push(lacks);
    missing.push(lacks.missing);
    if (lacks === NOTHING_LACKS) continue;
    const { open, below, above } = lacks;
    unbounded[place] =
      (open.length + below.length > 0 ? NO_LOW : 0) |
      (open.length + above.length > 0 ? NO_HIGH : 0);
  }
  return { lacking, missing, unbounded, provisional };
}

/** The lists of the last sum of a name, and of what; taken again where they are of the very same. */
export interface KeptLists {
  readonly of: readonly unknown[];
  readonly lists: Lists;
}

/** The lists that `make` gives of parts; those of before where all parts are the same objects. */
export function keptLists(
  all: Map<string, KeptLists>,
  name: string,
  of: readonly unknown[],
  make: () => Lists,
): Lists {
  const known = all.get(name);
  if (known && areEqual(known.of, of)) return known.lists;
  const lists = make();
  all.set(name, { of, lists });
  return lists;
}

function together(lacks: readonly LineLack[] | undefined): Lacking {
  const first = lacks?.[0];
  if (!lacks || !first) return NOTHING_LACKS;
  if (lacks.length === 1) return { ...first, missing: missingOf(first) };
  const above: MissingPart[] = [];
  const below: MissingPart[] = [];
  const open: MissingPart[] = [];
  for (const lack of lacks) {
    for (const part of lack.above) above.push(part);
    for (const part of lack.below) below.push(part);
    for (const part of lack.open) open.push(part);
  }
  const all = { above, below, open };
  return { ...all, missing: missingOf(all) };
}

/** The parts that a figure names as missing, in the order of `figureOf`. */
function missingOf({ above, below, open }: LineLack): readonly MissingPart[] {
  return open.length + below.length === 0 ? above : [...open, ...above, ...below];
}
