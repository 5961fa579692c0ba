import type { Breakdown, BreakdownRow, FoodValue } from '#lib/figures/breakdown';
import { percent } from '#lib/figures/breakdown-advice';
import { figureStatus, type Figure } from '#lib/figures/figure';
import { missingText, printFigure } from '#lib/figures/print-figure';
import { publishedStep } from '#lib/figures/published-numbers';
import { cellOf } from '#lib/foods/cell-of';
import type { Cell, FoodVersion } from '#lib/foods/food';
import { amountRange, BASIS_WORDS } from '#lib/foods/label-column';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { printGrams, printTo, roundTo, settled } from '#lib/units/print';
import { printedText } from '#lib/units/printed';

/** A food's value in words. */
export interface PrintedValue {
  readonly foodId: string;
  readonly name: string;
  /** Who states it: table, release and number, or the label and the day it was read. */
  readonly source: string;
  /** "120 kcal in 100 g", or what is not stated. */
  readonly value: string;
  /** "119.5–120.5 kcal"; empty where there is none. */
  readonly range: string;
  /** What the label prints for its serving, where the value was worked out from that. */
  readonly stated: string;
}

export interface PrintedRow {
  readonly row: BreakdownRow;
  readonly grams: string;
  readonly gramsRange: string;
  readonly foods: readonly PrintedValue[];
  /** What it adds; rows of a known figure add up to its sum to the last digit. */
  readonly adds: string;
  /** Its range, or why there is none. */
  readonly range: string;
  readonly shareOfTotal: string;
  readonly shareOfUncertainty: string;
  /** Which values its source does not state, and what they are counted as; empty where there are none. */
  readonly bounded: string;
}

export interface PrintedBreakdown {
  readonly unit: string;
  readonly rows: readonly PrintedRow[];
  /** The last row: the figure with one more digit than it is published with. */
  readonly sum: { readonly text: string; readonly range: string };
}

/** Rows have one more digit than the number itself. */
export function rowStep(nutrient: Nutrient): number {
  return settled(publishedStep(nutrient) / 10);
}

/**
 * Numbers rounded so that they add up to their rounded sum: each to a multiple of the step below or above it, the
 * largest remainders up, the earlier first.
 * @example addingUp([0.33, 0.33, 0.34], 0.1) // [0.3, 0.3, 0.4]
 */
export function addingUp(values: readonly number[], step: number): readonly number[] {
  const steps = values.map((value) => settled(value / step));
  const floors = steps.map(Math.floor);
  const total = values.reduce((sum, value) => sum + value, 0);
  const wanted = Math.round(roundTo(total, step) / step);
  const lacking = wanted - floors.reduce((sum, floor) => sum + floor, 0);
  const up = new Set(
    steps
      .map((exact, index) => ({ index, rest: exact - Math.floor(exact) }))
      .sort((a, b) => settled(b.rest - a.rest) || a.index - b.index)
      .slice(0, Math.max(0, lacking))
      .map(({ index }) => index),
  );
  return floors.map((floor, index) => settled((floor + (up.has(index) ? 1 : 0)) * step));
}

/** A breakdown in words: nothing of it is computed again by a page or a file. */
export function printBreakdown(of: Breakdown): PrintedBreakdown {
  const { figure, nutrient, rows } = of;
  const { unit } = NUTRIENTS[nutrient];
  const step = rowStep(nutrient);
  const tallied = addingUp(
    rows.map(({ value }) => value),
    step,
  );
  const sum = printFigure(figure, step);
  const knownSum = rows.reduce((all, { value }) => all + value, 0);
  return {
    unit,
    sum: {
      text: sum.number === null ? sum.text : `${sum.text} ${unit}`,
      range:
        figureStatus(figure) === 'atLeast'
          ? `what is known adds up to ${printTo(knownSum, step)} ${unit}`
          : sum.range,
    },
    rows: rows.map((row, index) => {
      const printed = printFigure(row.contribution, step);
      const known = figureStatus(row.contribution) === 'known';
      const low = row.massMg && printGrams(row.massMg.low);
      const high = row.massMg && printGrams(row.massMg.high);
      return {
        row,
        grams: row.massMg ? printGrams(row.massMg.value) : 'open',
        gramsRange: low === high ? '' : `${low}–${high}`,
        foods: row.foods.map((value) => printValue(value, of)),
        adds: known ? printTo(tallied[index] ?? row.value, step) : printed.text,
        range: known ? likelyText(row.contribution, step) : printed.range,
        shareOfTotal: row.shareOfTotal === null ? '' : percent(row.shareOfTotal),
        shareOfUncertainty: row.shareOfUncertainty === null ? '' : percent(row.shareOfUncertainty),
        bounded: row.bounded.map(boundedWords).join('; '),
      };
    }),
  };
}

/** `no fibre value, counted as 0 to 45 g in 100 g` */
function boundedWords({ nutrient, maxPer100 }: BreakdownRow['bounded'][number]): string {
  const { label, unit } = NUTRIENTS[nutrient];
  return `no ${label} value, counted as 0 to ${settled(maxPer100)} ${unit} in 100 g`;
}

function likelyText({ likelyLow, likelyHigh }: Figure, step: number): string {
  const low = printTo(likelyLow ?? 0, step);
  const high = printTo(likelyHigh ?? 0, step);
  return low === high ? '' : `${low}–${high}`;
}

function printValue({ food, per, value }: FoodValue, of: Breakdown): PrintedValue {
  const { version } = food;
  const { unit } = NUTRIENTS[of.nutrient];
  const cell = ownCell(version, of);
  const asStated = cell && per === PER[version.basis];
  const { low, high } = value;
  const amount = asStated ? cellText(cell) : String(Number(value.value.toPrecision(3)));
  const status = figureStatus(value);
  return {
    foodId: food.id,
    name: food.name,
    source: sourceWords(version),
    value:
      status === 'known' ? `${amount} ${unit} in ${PER_WORDS[per]}` : missingText(value.missing),
    range:
      low !== null && high !== null ? amountRange({ low, value: value.value, high }, unit) : '',
    stated:
      cell && !asStated
        ? `printed ${cellText(cell)} ${unit} ${BASIS_WORDS[version.basis]}${servingWords(version)}`
        : '',
  };
}

const PER = { per100g: '100 g', per100ml: '100 ml', serving: 'serving' } as const;
const PER_WORDS = { '100 g': '100 g', '100 ml': '100 ml', serving: 'a serving' } as const;

/** The cell that states the nutrient itself, on the region's basis; null where its value is derived. */
function ownCell(version: FoodVersion, { nutrient, region }: Breakdown): Cell | null {
  const cell = cellOf(version.values, nutrient);
  const basis = region === 'US' ? 'total' : 'available';
  if (cell.kind === 'missing') return null;
  return nutrient === 'carbohydrate' && version.carbBasis !== basis ? null : cell;
}

function cellText(cell: Cell): string {
  if (cell.kind === 'eq') return printedText(cell);
  return cell.kind === 'lessThan' ? `<${printedText(cell)}` : 'trace, 0';
}

function servingWords({ serving }: FoodVersion): string {
  if (serving?.massMg != null) return ` of ${printGrams(serving.massMg)} g`;
  return serving?.volumeMl == null ? '' : ` of ${serving.volumeMl} ml`;
}

/** "USDA SR28 05665", or "package label, read 2026-12-05". */
export function sourceWords({ source, release, sourceNo, dateRead }: FoodVersion): string {
  const from = [source, release, sourceNo].filter(Boolean).join(' ');
  return dateRead ? `${from}, read ${dateRead}` : from;
}
