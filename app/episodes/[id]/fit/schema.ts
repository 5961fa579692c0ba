import { z } from 'zod';
import { isNutrient } from '#lib/foods/nutrients';
import type { FitAsked } from '#lib/swap/fit-wish';
import { readGrams } from '#lib/units/read-quantity';
import { readNumber } from '#lib/units/read-typed';
import { rowId } from '../../../_forms/fields';
import { stepsFrom } from '../publish/swaps/steps-text';
import { ANY_STEP, FIELD } from './field-names';

const rows = (texts: Readonly<Record<string, string>>, prefix: string) =>
  Object.entries(texts).flatMap(([name, text]) =>
    name.startsWith(prefix) ? [[name.slice(prefix.length), text.trim()] as const] : [],
  );

/** The form of a fit: which fields it has follows from the dish. */
export const fitForm = z
  .record(z.string().max(200), z.string().max(2000))
  .transform((texts, context) => {
    const fault = (field: string, message: string) =>
      context.addIssue({ code: 'custom', path: [field], message });
    const grams = (field: string): number => {
      const read = readGrams(texts[field]?.trim() ?? '');
      if (read?.lowMg === read?.highMg && read) return read.valueMg;
      fault(field, 'Write grams as 120 or 12.5.');
      return 0;
    };
    const limits = (['atLeast', 'atMost'] as const).flatMap((relation) =>
      rows(texts, FIELD[relation]).flatMap(([nutrient, text]): FitAsked['limits'] => {
        if (text === '' || !isNutrient(nutrient)) return [];
        const amount = readNumber(text);
        if (amount !== null && amount <= 1_000_000) return [{ nutrient, relation, amount }];
        fault(`${FIELD[relation]}${nutrient}`, 'Write a number as 30 or 12.5.');
        return [];
      }),
    );
    for (const { nutrient, amount } of limits.filter(({ relation }) => relation === 'atLeast')) {
      const most = limits.find((each) => each.relation === 'atMost' && each.nutrient === nutrient);
      if (most && most.amount < amount) {
        fault(
          `${FIELD.atMost}${nutrient}`,
          `At most ${most.amount} is less than at least ${amount}.`,
        );
      }
    }
    const lines = rows(texts, FIELD.low).map(([lineId]): FitAsked['lines'][number] => {
      if (texts[`${FIELD.fixed}${lineId}`] === 'on') return { kind: 'fixed', lineId };
      const [lowMg, highMg] = [grams(`${FIELD.low}${lineId}`), grams(`${FIELD.high}${lineId}`)];
      if (lowMg > highMg) {
        fault(`${FIELD.high}${lineId}`, 'The most is less than the least.');
      }
      const step = texts[`${FIELD.step}${lineId}`] ?? ANY_STEP;
      const stepMg = step === ANY_STEP ? null : readNumber(step);
      if (stepMg === 0) fault(`${FIELD.step}${lineId}`, 'Choose a step.');
      return { kind: 'free', lineId, lowMg, highMg, stepMg };
    });
    const targets = rows(texts, FIELD.target).flatMap(([id, text]) => (text === 'on' ? [id] : []));
    if (targets.length + limits.length === 0) {
      fault('', 'Say what it should come to: tick a target, or write a least or a most.');
    }
    if (!lines.some(({ kind }) => kind === 'free')) {
      fault('', 'Every ingredient stays as it is: let at least one change.');
    }
    const asked: FitAsked = {
      ...{ targets, limits, lines, strict: texts.strict === 'on' },
      portionId: texts.portionId || null,
    };
    const place = z.object({ episodeId: rowId, segmentId: rowId }).safeParse(texts);
    if (!place.success) {
      fault('', 'Something is missing: open the page again.');
      return z.NEVER;
    }
    return { ...place.data, asked };
  });

export const applyFitForm = z.object({
  episodeId: rowId,
  segmentId: rowId,
  steps: z.string().max(30_000).default('').transform(stepsFrom),
  /** The amounts that the page showed beside the new ones. */
  was: z.string().max(10_000).default(''),
});
