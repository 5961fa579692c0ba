import { z } from 'zod';
import {
  ALLERGENS,
  ROUNDING_RULES,
  SECTIONS,
  stateSchema,
  type Allergen,
  type Cell,
  type Values,
} from '#lib/foods/food';
import { panelNutrients } from '#lib/foods/label-panel';
import { readCell } from '#lib/foods/read-cell';
import { NUTRIENTS } from '#lib/foods/nutrients';
import { readPrintedGrams } from '#lib/units/read-typed';
import { unclearNumber } from '#lib/units/printed';
import { optionalText, requiredText, revision, rowId } from '../_forms/fields';
import { optionalNumber } from '../_forms/number-fields';
import { CONTAINS, MAY, SECOND, VALUE } from './field-names';
import { packOf, packTexts } from './pack-schema';
import { refuseOf, refuseTexts } from './refuse-schema';

const section = z.enum(SECTIONS, { error: 'Choose where it stands in a shop.' });

/** A printed mass; null where none was typed. */
const printedGrams = z
  .string()
  .trim()
  .max(20, 'This is too long for an amount.')
  .default('')
  .transform((text, context) => {
    if (text === '') return null;
    const read = readPrintedGrams(text);
    if (!read) {
      context.addIssue({
        code: 'custom',
        message: unclearNumber(text) ?? 'Write grams with the digits printed: 28 or 28.5.',
      });
    }
    return read;
  });

const labelTexts = {
  rule: z.enum(ROUNDING_RULES, { error: 'Choose which panel it is.' }),
  basis: z.enum(['serving', 'per100g', 'per100ml'], { error: 'Choose what the values are for.' }),
  secondBasis: z.enum(['', 'per100g', 'per100ml', 'serving']).default(''),
  servingG: printedGrams,
  servingMl: optionalNumber(0, 100_000),
  servingText: optionalText(80),
  perPack: optionalNumber(0, 10_000),
  carbBasis: z.enum(['total', 'available'], { error: 'Choose where the fibre is.' }),
  state: stateSchema,
  keepReason: optionalText(400),
  ...refuseTexts,
};

type LabelSent = z.output<z.ZodObject<typeof labelTexts>> & Readonly<Record<string, unknown>>;

/** The cells of one column, by the names of their fields; what was left empty is left out. */
function cells(sent: LabelSent, prefix: string, context: z.RefinementCtx): Values {
  const values: Values = {};
  for (const nutrient of panelNutrients(sent.rule)) {
    const name = `${prefix}${nutrient}`;
    const text = sent[name];
    const cell: Cell | null = readCell(typeof text === 'string' ? text : '', nutrient);
    if (cell === null) {
      const { label, unit } = NUTRIENTS[nutrient];
      const unclear = typeof text === 'string' ? unclearNumber(text) : null;
      const message =
        unclear ??
        `Write ${label} as printed, in ${unit}: 0, 0.0, <1, trace; empty where the label has none.`;
      context.addIssue({ code: 'custom', path: [name], message });
    } else if (cell.kind !== 'missing') values[nutrient] = cell;
  }
  return values;
}

/** What a label says, as a version without its id, number and source. */
function labelOf(sent: LabelSent, context: z.RefinementCtx) {
  const { basis, secondBasis, servingG, servingMl, servingText, perPack } = sent;
  const values = cells(sent, VALUE, context);
  const second = cells(sent, SECOND, context);
  const fault = (path: string, message: string) =>
    context.addIssue({ code: 'custom', path: [path], message });
  if (Object.keys(values).length === 0) {
    fault(`${VALUE}energyKcal`, 'Write at least one value, as the label prints it.');
  }
  const hasSecond = Object.keys(second).length > 0;
  const perServing = basis === 'serving' || (hasSecond && secondBasis === 'serving');
  if (perServing && servingG === null && servingMl === null) {
    fault('servingG', 'Say how much a serving is, in grams or millilitres, as printed.');
  }
  if (hasSecond && secondBasis === '') {
    fault('secondBasis', 'Say what the second column is for.');
  } else if (hasSecond && (basis === 'serving') === (secondBasis === 'serving')) {
    fault(
      'secondBasis',
      'Beside a serving a second column is for 100 g or ml, and beside those for a serving.',
    );
  }
  const noServing =
    servingG === null && servingMl === null && servingText === '' && perPack === null;
  return {
    basis,
    serving: noServing
      ? null
      : {
          massMg: servingG?.mg ?? null,
          volumeMl: servingMl,
          decimals: servingG?.decimals ?? 0,
          text: servingText,
          perPack,
        },
    values,
    secondColumn: hasSecond && secondBasis !== '' ? { basis: secondBasis, values: second } : null,
    carbBasis: sent.carbBasis,
    state: sent.state,
    refuse: refuseOf(sent, context),
    rule: sent.rule,
  };
}

interface SaidAllergen {
  readonly allergen: Allergen;
  readonly standing: 'declared' | 'mayContain';
}

/** What the label declares; 'contains' wins where both boxes are ticked. */
function allergensOf(sent: Readonly<Record<string, unknown>>): SaidAllergen[] {
  return ALLERGENS.flatMap((allergen): SaidAllergen[] => {
    if (sent[`${CONTAINS}${allergen}`] === 'on') return [{ allergen, standing: 'declared' }];
    if (sent[`${MAY}${allergen}`] === 'on') return [{ allergen, standing: 'mayContain' }];
    return [];
  });
}

export const newFoodForm = z
  .looseObject({
    name: requiredText('what it is called', 240),
    section,
    ...labelTexts,
    ...packTexts,
  })
  .transform((sent, context) => ({
    name: sent.name,
    section: sent.section,
    label: labelOf(sent, context),
    keepReason: sent.keepReason,
    allergens: allergensOf(sent),
    pack: packOf(sent, context, sent.name),
  }));

export const readAgainForm = z
  .looseObject({ foodId: rowId, ...labelTexts })
  .transform((sent, context) => ({
    foodId: sent.foodId,
    label: labelOf(sent, context),
    keepReason: sent.keepReason,
  }));

export const sameLabelForm = z.object({ foodId: rowId });
export const takeBackForm = z.object({ foodId: rowId, versionId: rowId });

export const foodForm = z.object({
  foodId: rowId,
  rev: revision,
  name: requiredText('what it is called', 240),
  section,
});

export const removeFoodForm = z.object({ foodId: rowId, rev: revision });

export const allergenForm = z.object({
  foodId: rowId,
  allergen: z.enum(ALLERGENS, { error: 'Choose an allergen.' }),
  standing: z.enum(['declared', 'mayContain', 'confirmed', 'denied'], {
    error: 'Choose what the label says.',
  }),
});
