import { dishesOf } from '#lib/episode/context';
import type { Variant } from '#lib/episode/publish-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { HEADLINE_NUTRIENTS } from '#lib/figures/shown-nutrients';
import type { Region } from '#lib/figures/line-parts';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import type { Result } from '#lib/result';
import { daySets, daySwap, type DaySwap } from '#lib/swap/day-swaps';
import type { Differences } from '#lib/swap/difference';
import { sayDifference } from '#lib/swap/say-difference';
import { swapDifference, type SwapDifference } from '#lib/swap/swap-difference';
import { priceText } from '#lib/units/print-money';

/** Of what the numbers of a swap are told: a portion or the whole dish. */
interface Told {
  readonly differences: Differences;
  readonly of: string;
  readonly region: Region;
}

/** Told of the portion asked for, else of the first equal one, else of the whole dish. */
function told(file: EpisodeFile, swap: SwapDifference, portionId?: string | null): Told {
  const { segments, region } = file.episode;
  const dish = dishesOf(segments).find(({ id }) => id === swap.segmentId);
  const portions = dish?.recipe.portions ?? [];
  const asked = portions.find(({ id }) => id === portionId);
  const portion =
    portionId === null ? undefined : (asked ?? portions.find(({ kind }) => kind === 'count'));
  const found = swap.portions.find((each) => each.portionId === portion?.id);
  if (!portion || !found) return { differences: swap.whole, of: 'for the whole dish', region };
  return {
    ...{ differences: found.differences, region },
    of: portion.kind === 'count' ? 'a portion' : `for ${found.name}`,
  };
}

/**
 * What to say of a swap in a reply or a pinned comment: its numbers, in whole ones that hold by their likely range, or
 * why there are none yet; then the allergens that it may bring.
 * @param portionId of which portion; null of the whole dish; left out of the first equal portion
 * @example 'With “full-fat one” it is about 40 calories more a portion; the protein stays within a gram.'
 */
export function swapSentence(
  file: EpisodeFile,
  swap: SwapDifference,
  portionId?: string | null,
): string {
  return sentenceOf(swap, told(file, swap, portionId));
}

/**
 * What to say of swaps of several dishes that are saved under one name: what they do to the day together.
 * @example 'With “bigger day” it is about 300 calories more in the day; the fat stays within 3 g.'
 */
export function daySentence(file: EpisodeFile, swap: DaySwap): string {
  return sentenceOf(swap, dayTold(file, swap));
}

const dayTold = ({ episode: { region } }: EpisodeFile, { differences }: DaySwap): Told => ({
  ...{ differences, region },
  of: 'in the day',
});

function sentenceOf(swap: SwapDifference | DaySwap, of: Told): string {
  const numbers =
    swap.unconfirmed === '' ? numbersSaid(of) : `there are no numbers yet (${swap.unconfirmed})`;
  const brings = broughtCells(swap).map(({ text }) => text);
  const ends = brings.length === 0 ? [] : [`${capitalised(brings.join('; '))}.`];
  return [`With “${swap.name}” ${numbers}.`, ...ends].join(' ');
}

function numbersSaid({ differences, of, region }: Told): string {
  const said = HEADLINE_NUTRIENTS.flatMap((nutrient) => {
    const difference = differences[nutrient];
    return difference ? [{ nutrient, ...sayDifference(difference, region) }] : [];
  });
  const changed = said.filter(({ kind }) => kind !== 'alike' && kind !== 'open');
  const alike = said.filter(({ kind }) => kind === 'alike');
  const open = said.filter(({ kind }) => kind === 'open');
  const parts = [
    ...(changed.length > 0 ? [`it is ${joined(changed.map(({ text }) => text))} ${of}`] : []),
    ...groupsOf(alike, region).map(
      ({ names, text }) =>
        `${joined(names)} ${names.length > 1 || names[0] === 'the calories' ? 'stay' : 'stays'} ${text}${changed.length > 0 ? '' : ` ${of}`}`,
    ),
    ...(open.length > 0
      ? [
          `of ${joined(open.map(({ nutrient }) => nameOf(nutrient, region)))} I can’t say (${open[0]?.text ?? ''})`,
        ]
      : []),
  ];
  return parts.join('; ');
}

const capitalised = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

const nameOf = (nutrient: Nutrient, region: Region) => `the ${labelOf(nutrient, region)}`;

/** Calories in the US, energy in the EU. */
const labelOf = (nutrient: Nutrient, region: Region) =>
  nutrient === 'energyKcal' && region === 'EU' ? 'energy' : NUTRIENTS[nutrient].label;

/** What stays alike, those with the same words together. */
function groupsOf(
  alike: readonly { readonly nutrient: Nutrient; readonly text: string }[],
  region: Region,
) {
  const texts = [...new Set(alike.map(({ text }) => text))];
  return texts.map((text) => ({
    text,
    names: alike
      .filter((each) => each.text === text)
      .map(({ nutrient }) => nameOf(nutrient, region)),
  }));
}

function joined(texts: readonly string[]): string {
  if (texts.length < 2) return texts.join('');
  return `${texts.slice(0, -1).join(', ')} and ${texts.at(-1) ?? ''}`;
}

/** One saved swap in a table, or those of several dishes under one name: what it does, column by column. */
export interface SwapRow {
  /** Null for those of several dishes. */
  readonly variantId: string | null;
  readonly name: string;
  /** The dish, or the dishes. */
  readonly dish: string;
  /** Of what: 'a portion', 'for the whole dish', 'in the day'; empty where no number is told. */
  readonly of: string;
  readonly cells: readonly { readonly label: string; readonly text: string }[];
  /** Why it cannot be told: it names what is gone. */
  readonly problem: string | null;
}

/** All saved swaps as rows and as text that can be pasted. */
export interface SwapTable {
  readonly rows: readonly SwapRow[];
  readonly text: string;
}

/**
 * A table of swaps, one line for each: `Full-fat one (soup, a portion): about 41 calories more; protein within a gram; …`;
 * at its end those of several dishes that have one name, with what they do to the day together.
 */
export function swapTable(file: EpisodeFile, variants: readonly Variant[]): SwapTable {
  const dishes = dishesOf(file.episode.segments);
  const titles = (ids: readonly string[]) =>
    joined(dishes.flatMap(({ id, title }) => (ids.includes(id) ? [title] : [])));
  const rows = [
    ...variants.map((variant): SwapRow => {
      const row = {
        variantId: variant.id,
        name: variant.name,
        dish: titles([variant.segmentId]),
      };
      const swap = swapDifference(file, variant, HEADLINE_NUTRIENTS);
      return rowOf(row, swap, (value) => told(file, value));
    }),
    ...daySets(variants).map((set): SwapRow => {
      const ids = set.variants.map(({ segmentId }) => segmentId);
      const row = { variantId: null, name: set.name, dish: titles(ids) };
      return rowOf(row, daySwap(file, set, HEADLINE_NUTRIENTS), (value) => dayTold(file, value));
    }),
  ];
  return { rows, text: rows.map(rowText).join('\n') };
}

function rowOf<T extends SwapDifference | DaySwap>(
  row: Pick<SwapRow, 'variantId' | 'name' | 'dish'>,
  swap: Result<T>,
  tell: (swap: T) => Told,
): SwapRow {
  if (!swap.ok) {
    const problem = swap.problems.map(({ message }) => message).join(' ');
    return { ...row, of: '', cells: [], problem };
  }
  const { unconfirmed } = swap.value;
  if (unconfirmed !== '') {
    const cells = [{ label: 'numbers', text: `no numbers yet: ${unconfirmed}` }];
    return { ...row, of: '', cells: [...cells, ...allergenCells(swap.value)], problem: null };
  }
  const { differences, of, region } = tell(swap.value);
  const cells = HEADLINE_NUTRIENTS.flatMap((nutrient) => {
    const difference = differences[nutrient];
    if (!difference) return [];
    const { kind, text } = sayDifference(difference, region);
    const label = labelOf(nutrient, region);
    return [{ label, text: kind === 'alike' || kind === 'open' ? `${label} ${text}` : text }];
  });
  const others = [...costCell(swap.value), ...allergenCells(swap.value)];
  return { ...row, of, cells: [...cells, ...others], problem: null };
}

/** What a swap costs, as a cell of a table; none where nobody can say. */
export function costCell({ cost }: Pick<SwapDifference, 'cost'>): SwapRow['cells'] {
  if (!cost.known) return [];
  if (cost.minor === 0) return [{ label: 'cost', text: 'costs the same' }];
  // What comes to less than a cent a portion is told of them all.
  const each = cost.eachMinor === 0 ? null : cost.eachMinor;
  const minor = each ?? cost.minor;
  const of = each === null ? 'in all' : 'a portion';
  const text = `${priceText(Math.abs(minor), cost.currency)} ${minor > 0 ? 'more' : 'less'} ${of}`;
  return [{ label: 'cost', text }];
}

/** What a swap does to allergens, as cells of a table. */
export function allergenCells(swap: Pick<SwapDifference, 'allergens'>): SwapRow['cells'] {
  return [
    ...broughtCells(swap),
    ...swap.allergens.lost
      .filter(({ standing }) => standing === 'contains')
      .map((each) => ({
        label: 'allergens',
        text: `no ${each.words} as an ingredient (check labels for traces)`,
      })),
  ];
}

/** The allergens that a swap brings or may bring, and the foods of which nobody has said any. */
function broughtCells({ allergens }: Pick<SwapDifference, 'allergens'>): SwapRow['cells'] {
  const words = { contains: 'with', mayContain: 'may contain', proposed: 'to check:' } as const;
  return [
    ...[...allergens.gained, ...allergens.lessSure].map((each) => ({
      label: 'allergens',
      text: `${words[each.standing]} ${each.words} (${each.foods.join(', ')})`,
    })),
    ...allergens.unsaid.map((name) => ({
      label: 'allergens',
      text: `allergens of ${name}: read its label`,
    })),
  ];
}

function rowText({ name, dish, of, cells, problem }: SwapRow): string {
  if (problem !== null) return `${name}: ${problem}`;
  const where = [dish, of.replace(/^for /, '')].filter((part) => part !== '').join(', ');
  return `${name} (${where}): ${cells.map(({ text }) => text).join('; ')}`;
}
