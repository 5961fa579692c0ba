import { z } from 'zod';
import { OVEN_MILLI_C } from '#lib/episode/step-limits';
import { isZone } from '#lib/units/local-date';
import { offBy, permilleTyped, ppmTyped, readPermille, readPpm } from '#lib/units/read-typed';
import { checkDegrees } from '../_forms/degrees';
import { grams, requiredText, revision, rowId } from '../_forms/fields';
import { minutes, optionalNumber, whole } from '../_forms/number-fields';

/** The kinds of measure by eye, each a field of the form of spreads. */
export const SPREAD_KINDS = ['spoon', 'cup', 'piece', 'slice', 'handful', 'portion'] as const;

export const kitchenForm = z
  .object({
    kitchenId: rowId,
    rev: revision,
    name: requiredText('what it is called', 80),
    zone: z
      .string()
      .trim()
      .max(64)
      .refine(isZone, 'Write a time zone as Europe/Copenhagen or America/New_York.'),
    lat: optionalNumber(-90, 90),
    lon: optionalNumber(-180, 180),
    burners: whole('how many burners', 0, 12),
  })
  .superRefine(({ lat, lon }, context) => {
    if ((lat === null) === (lon === null)) return;
    const path = [lat === null ? 'lat' : 'lon'];
    const message = 'Latitude and longitude go together: give both, or neither.';
    context.addIssue({ code: 'custom', path, message });
  });

const unit = z.enum(['C', 'F'], { error: 'Choose °C or °F.' });

interface Degrees {
  readonly text: string;
  readonly unit: 'C' | 'F';
  readonly path: string;
  readonly min: number;
  readonly max: number;
}

function degrees(sent: Degrees, context: z.RefinementCtx): number {
  const { milliC, wrong } = checkDegrees(sent.text, sent.unit, sent);
  if (wrong !== null) context.addIssue({ code: 'custom', path: [sent.path], message: wrong });
  return milliC ?? 0;
}

const ovenTexts = z
  .object({
    name: requiredText('what it is called', 80),
    racks: whole('how many racks', 1, 12),
    cold: z.string().trim().max(20),
    coldUnit: unit,
    most: z.string().trim().max(20).default(''),
    mostUnit: unit.default('C'),
    heat: whole('how many seconds it takes', 0, 600),
    cool: whole('how many seconds it takes', 0, 600),
  })
  .transform(({ cold, coldUnit, most, mostUnit, heat, cool, ...rest }, context) => ({
    ...rest,
    mostMilliC:
      most === ''
        ? null
        : degrees({ text: most, unit: mostUnit, path: 'most', ...OVEN_MILLI_C }, context),
    coldMilliC: degrees({ text: cold, unit: coldUnit, path: 'cold', min: 0, max: 60_000 }, context),
    heatSPerC: heat,
    coolSPerC: cool,
  }));

export const newOvenForm = z.intersection(z.object({ kitchenId: rowId }), ovenTexts);
export const ovenForm = z.intersection(z.object({ ovenId: rowId, rev: revision }), ovenTexts);

export const changeForm = z
  .object({
    ovenId: rowId,
    from: z.string().trim().max(20),
    fromUnit: unit,
    to: z.string().trim().max(20),
    toUnit: unit,
    took: minutes('how long it took', 86_400),
  })
  .transform(({ ovenId, took, ...sent }, context) => {
    const limits = { min: 0, max: OVEN_MILLI_C.max };
    const from = { text: sent.from, unit: sent.fromUnit, path: 'from', ...limits };
    const to = { text: sent.to, unit: sent.toUnit, path: 'to', ...limits };
    return {
      ovenId,
      fromMilliC: degrees(from, context),
      toMilliC: degrees(to, context),
      seconds: took,
    };
  });

/** A text in percent, in whole parts. */
function percent(
  reader: (text: string) => number | null,
  print: (parts: number) => string,
  max: number,
) {
  return z
    .string({ error: 'Say how far, in percent.' })
    .trim()
    .max(20, 'This is too long for a number.')
    .transform((text, context): number => {
      const parts = reader(text);
      const wrong =
        parts === null
          ? 'Write percent as 10 or 2.5.'
          : offBy(parts, { min: 0, max }, (each) => `${print(each)} %`);
      if (wrong !== null) context.addIssue({ code: 'custom', message: wrong });
      return parts ?? 0;
    });
}

const resolution = grams.transform((mass, context): number => {
  if (mass && mass.lowMg === mass.highMg && mass.valueMg > 0) return mass.valueMg;
  context.addIssue({ code: 'custom', message: 'Write what one step shows, in grams: 1 or 0.1.' });
  return z.NEVER;
});

const scaleTexts = {
  name: requiredText('what it is called', 80),
  resolution,
  accuracy: percent(readPpm, ppmTyped, 100_000),
};

export const newScaleForm = z.object({ kitchenId: rowId, ...scaleTexts });
export const scaleForm = z.object({ scaleId: rowId, rev: revision, ...scaleTexts });

const spread = percent(readPermille, permilleTyped, 1000);

export const spreadsForm = z.looseObject({
  kitchenId: rowId,
  spoon: spread,
  cup: spread,
  piece: spread,
  slice: spread,
  handful: spread,
  portion: spread,
});

export const removePartForm = z.object({ partId: rowId, rev: revision });
