import { contradiction, type Contradiction } from '#lib/claims/contradict/contradiction';
import { areApart, type SaidValue } from '#lib/claims/contradict/said-values';
import { groupedBy } from '#lib/claims/contradict/grouped-by';
import { nearestIn, type NearestTo } from '#lib/claims/contradict/nearest-value';
import type { SaidInterval } from '#lib/claims/said-interval';
import type { Region } from '#lib/figures/line-parts';
import { ENERGY_PER_G } from '#lib/foods/energy-per-gram';
import type { Nutrient } from '#lib/foods/nutrients';
import { printCount } from '#lib/units/print';

/** In a gram; of fibre that is stated beside the carbohydrate. */
const KCAL = ENERGY_PER_G.kcal;

/**
 * How far a right number of calories may be from that: with the fibre known from 0.90 of it less 5 kcal to 1.07 of it
 * and 5 kcal, without by 20 kcal or 20 %. Derived from the foods of SR28 without alcohol, 1.0 % and 1.5 % of which lie
 * outside, most of them for reasons that their names tell.
 */
const WITH_FIBRE = { low: 0.9, high: 1.07, kcal: 5 } as const;
const WITHOUT = { share: 0.2, kcal: 20 } as const;

/** Listed macros that do not come to the calories said of the same thing. */
export function energyOfMacros(values: readonly SaidValue[], region: Region): Contradiction[] {
  const things = groupedBy(
    values,
    ({ thing, scope, row }) => `${thing} ${scope} ${row.place.textId}`,
  );
  return [...things.values()].flatMap((all) => {
    const nutrients = groupedBy(all, ({ nutrient }) => nutrient);
    const searched = LISTED.map((nutrient) => nearestIn(nutrients.get(nutrient) ?? [], startOf));
    const energies = nutrients.get('energyKcal') ?? [];
    return energies.flatMap((each) => check(each, searched, region));
  });
}

/** Where a value begins: a breath counts from one beginning to the other. */
const startOf = ({ row }: SaidValue) => ({ start: row.statement.start, end: row.statement.start });

const LISTED = ['protein', 'carbohydrate', 'fat', 'fibre'] as const;

/** Macros beside an energy: the nearest of each in its text, within a breath. */
const BREATH = 240;

function check(energy: SaidValue, searched: readonly NearestTo[], region: Region): Contradiction[] {
  const [protein, carbohydrate, fat, fibre] = searched.map(
    (nearestTo) => nearestTo(energy, BREATH)?.value,
  );
  if (!protein || !carbohydrate || !fat) return [];
  const macros = [protein, carbohydrate, fat];
  const allowed = allowedEnergy(macros, fibre ?? null);
  if (!areApart(allowed, energy.interval)) return [];
  const given = macros.reduce((sum, { nutrient, low, high }) => {
    return sum + (kcalOf(nutrient) * (low + high)) / 2;
  }, 0);
  const unit = region === 'US' ? 'calories' : 'kcal';
  const texts = macros.map(({ text }) => text);
  return [
    contradiction({
      kind: 'energy',
      nutrient: 'energyKcal',
      segmentId: energy.segmentId,
      words: `${texts[0] ?? ''}, ${texts[1] ?? ''} and ${texts[2] ?? ''} come to ${printCount(given)} ${unit} by 4, 4 and 9 a gram, not ${energy.text}; alcohol, sweeteners or much fibre may be why`,
      sides: [
        { value: energy.text, said: [energy.row] },
        { value: texts.join(', '), said: macros.map(({ row }) => row) },
      ],
    }),
  ];
}

const kcalOf = (nutrient: Nutrient): number =>
  nutrient === 'fat' ? KCAL.fat : nutrient === 'protein' ? KCAL.protein : KCAL.carbohydrate;

/** All calories that macros, as they are said, allow. */
function allowedEnergy(macros: readonly SaidValue[], fibre: SaidValue | null): SaidInterval {
  const end = (of: (interval: SaidInterval) => number) =>
    macros.reduce(
      (sum, { nutrient, interval }) => sum + kcalOf(nutrient) * Math.max(0, of(interval)),
      0,
    );
  const [low, high] = [end(({ from }) => from), end(({ to }) => to)];
  const common = { fromOpen: false, toOpen: false, oneSided: false };
  if (fibre === null) {
    return {
      ...common,
      from: low - Math.max(WITHOUT.kcal, WITHOUT.share * low),
      to: high + Math.max(WITHOUT.kcal, WITHOUT.share * high),
    };
  }
  const inside = KCAL.carbohydrate * Math.max(0, fibre.interval.to);
  const beside = KCAL.fibre * Math.max(0, fibre.interval.to);
  return {
    ...common,
    from: WITH_FIBRE.low * (low - inside) - WITH_FIBRE.kcal,
    to: WITH_FIBRE.high * (high + beside) + WITH_FIBRE.kcal,
  };
}
