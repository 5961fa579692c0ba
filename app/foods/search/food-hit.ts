import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { cellOf, type Cell, type Food } from '#lib/foods/food';
import { printedText } from '#lib/units/printed';
import type { FoodHit } from './hit';

const BASIS = { per100g: '100 g', per100ml: '100 ml', serving: 'a serving' } as const;
const SHOWN = ['energyKcal', 'protein'] as const satisfies readonly Nutrient[];

/** A food as a list shows it, with digits as its source prints them. */
export function foodHit({ id, name, version }: Food): FoodHit {
  const values = SHOWN.map((nutrient) => {
    const { unit, label } = NUTRIENTS[nutrient];
    const text = cellText(cellOf(version.values, nutrient));
    return nutrient === 'energyKcal' ? `${text} ${unit}` : `${text} ${unit} ${label}`;
  });
  const source = [version.source, version.release, version.sourceNo].filter(Boolean).join(' ');
  return { id, name, note: `${source} · ${values.join(', ')} in ${BASIS[version.basis]}` };
}

function cellText(cell: Cell): string {
  switch (cell.kind) {
    case 'eq':
      return printedText(cell);
    case 'lessThan':
      return `<${printedText(cell)}`;
    case 'trace':
      return 'a trace of';
    case 'missing':
      return 'no value,';
  }
}
