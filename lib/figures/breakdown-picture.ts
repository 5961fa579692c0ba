import type { EpisodeFile, Target } from '#lib/episode/schema';
import { figureParts, type FigureParts, type RowParts } from '#lib/figures/breakdown-parts';
import { figureStatus, type Figure } from '#lib/figures/figure';
import { howFar, judgeLimit, type LimitVerdict } from '#lib/figures/judge-limit';
import { figureOf } from '#lib/figures/parts';
import { missingText } from '#lib/figures/print-figure';
import type { NumberScope } from '#lib/figures/published-numbers';
import { HEADLINE_NUTRIENTS } from '#lib/figures/shown-nutrients';
import type { Nutrient } from '#lib/foods/nutrients';
import { boundsOf } from '#lib/units/bounds';

/** A stretch of a bar: one ingredient or dish, or the rest together. */
export interface BarPart {
  readonly key: string;
  readonly name: string;
  /** In the nutrient's unit. */
  readonly value: number;
  /** Of the bar, 0 to 1. */
  readonly share: number;
  readonly rest: boolean;
}

/** A target that a bar is held against. */
export interface BarTarget {
  readonly id: string;
  readonly relation: Target['relation'];
  readonly amount: number;
  readonly verdict: LimitVerdict;
  readonly far: string | null;
}

/** Where one nutrient of an amount comes from. */
export interface PictureBar {
  readonly nutrient: Nutrient;
  readonly figure: Figure;
  /** Largest first; dishes keep their order. None where the figure is open or nothing. */
  readonly parts: readonly BarPart[];
  /** What the bar lacks, in words; empty where it lacks nothing. */
  readonly lacks: string;
  readonly targets: readonly BarTarget[];
  /** What the drawing is as long as: the largest of the sum and the targets. */
  readonly reach: number;
}

/** How many ingredients a bar names. */
export const NAMED_PARTS = 5;

/**
 * A bar for each headline nutrient, and for each that has a target here: of a dish by ingredients, the five
 * largest by name and the others together; of all dishes by dish.
 */
export function pictureBars(file: EpisodeFile, scope: NumberScope): readonly PictureBar[] {
  const targets = targetsOf(file, scope);
  const nutrients = new Set<Nutrient>([
    ...HEADLINE_NUTRIENTS,
    ...targets.map(({ nutrient }) => nutrient),
  ]);
  return [...nutrients].flatMap((nutrient) => {
    const parts = figureParts(file, scope, nutrient);
    const held = targets.filter((target) => target.nutrient === nutrient);
    return parts ? [barOf(nutrient, parts, scope, held)] : [];
  });
}

function targetsOf({ episode }: EpisodeFile, scope: NumberScope): readonly Target[] {
  return episode.targets.filter(({ segmentId, portionId }) => {
    if (scope.kind === 'day') return segmentId === null;
    if (scope.kind === 'portion') return portionId === scope.portionId;
    return scope.kind === 'whole' && segmentId === scope.segmentId && portionId === null;
  });
}

function barOf(
  nutrient: Nutrient,
  { total, rows }: FigureParts,
  scope: NumberScope,
  targets: readonly Target[],
): PictureBar {
  const figure = figureOf(nutrient, total);
  const all = scope.kind === 'day' ? byDish(rows) : byIngredient(rows);
  const sum = all.reduce((total, { value }) => total + value, 0);
  const open = figureStatus(figure) === 'open';
  return {
    nutrient,
    figure,
    parts: open || sum <= 0 ? [] : all.map((part) => ({ ...part, share: part.value / sum })),
    lacks: missingText(figure.missing),
    targets: targets.map(({ id, relation, amount }) => ({
      id,
      relation,
      amount,
      verdict: judgeLimit(figure, relation, amount),
      far: howFar(figure, relation, amount),
    })),
    reach: Math.max(open ? 0 : sum, ...targets.map(({ amount }) => amount)),
  };
}

type Stretch = Omit<BarPart, 'share'>;

const known = ({ parts }: RowParts) => boundsOf(parts.terms, parts.sources).value;

function byIngredient(rows: readonly RowParts[]): Stretch[] {
  const sorted = rows
    .map((row) => ({ key: row.line.id, name: row.line.text, value: known(row), rest: false }))
    .filter(({ value }) => value > 0)
    .sort((a, b) => b.value - a.value);
  const named = sorted.slice(0, NAMED_PARTS);
  const others = sorted.slice(NAMED_PARTS);
  const [only] = others;
  if (!only) return named;
  const value = others.reduce((sum, other) => sum + other.value, 0);
  const name = others.length === 1 ? only.name : `${others.length} others`;
  return [...named, { key: 'others', name, value, rest: true }];
}

function byDish(rows: readonly RowParts[]): Stretch[] {
  const dishes = new Map<string, Stretch>();
  for (const row of rows) {
    const { id, title } = row.dish;
    const value = (dishes.get(id)?.value ?? 0) + known(row);
    dishes.set(id, { key: id, name: title, value, rest: false });
  }
  return [...dishes.values()].filter(({ value }) => value > 0);
}
