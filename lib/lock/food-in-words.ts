import { compareVersions } from '#lib/foods/compare-versions';
import type { Food, FoodVersion } from '#lib/foods/food';
import type { Field } from '#lib/lock/inputs-in-words';
import { printedValue } from '#lib/units/printed';
import { scaleGramsText } from '#lib/units/scale-grams';

/** What a food's numbers rest on, in words: what it states, who says so, what its measures weigh, what it yields. */
export function foodFields({ version, measures, yields }: Food): readonly Field[] {
  return [
    ['source', [version.source, version.release, version.sourceNo].filter(Boolean).join(' ')],
    ['rounded by', RULES[version.rule]],
    ['servings in the pack', text(version.serving?.perPack)],
    ['decimals of the serving', text(version.serving?.decimals)],
    ['energy factors', factorsText(version.factors)],
    ...statedFields(version, ''),
    ...(version.secondColumn
      ? statedFields({ ...version, ...version.secondColumn, serving: null }, 'second column: ')
      : []),
    ...measures.map(({ name, qtyNum, qtyDen, massMg, digits }): Field => {
      const count = qtyDen === 1 ? String(qtyNum) : `${String(qtyNum)}/${String(qtyDen)}`;
      return [`${count} ${name}`, `${scaleGramsText(massMg)} g (${String(digits)} decimals)`];
    }),
    ...yields.map(({ id, method, rawMg, cookedMg, source, own }): Field => {
      const half = own ? `, ± ${scaleGramsText(own.halfMg)} g` : '';
      const name = `yield, ${method || 'cooked'} (${source}${own ? ` ${id}` : ''})`;
      return [
        name,
        `${scaleGramsText(cookedMg)} g cooked from ${scaleGramsText(rawMg)} g raw${half}`,
      ];
    }),
  ];
}

function statedFields(version: FoodVersion, prefix: string): Field[] {
  return compareVersions([version]).map(({ label, unit, cells }): Field => {
    const [cell] = cells;
    // Where fibre stands, beside the value of fibre.
    const name = unit === '' && label === 'fibre' ? 'where fibre stands' : label;
    return [`${prefix}${name}`, [cell?.text ?? '', unit].filter(Boolean).join(' ')];
  });
}

const RULES: Readonly<Record<FoodVersion['rule'], string>> = {
  us: 'the rules for labels in the US',
  eu: 'the rules for labels in the EU',
  asPrinted: 'the digits printed',
};

const text = (value: number | null | undefined) => (value == null ? '' : String(value));

function factorsText(factors: FoodVersion['factors']): string {
  if (factors === null) return '';
  return Object.entries(factors)
    .flatMap(([name, printed]) => (printed ? [`${name} ${String(printedValue(printed))}`] : []))
    .join(', ');
}
