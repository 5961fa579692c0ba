import { z } from 'zod';
import { isNutrient } from '#lib/foods/nutrients';
import { LEAST_STEP_MG, MOST_ASKED, MOST_FREE, type FitAsked } from '#lib/swap/fit-wish';
import { readGrams } from '#lib/units/read-quantity';
import { offBy, readNumber } from '#lib/units/read-typed';
import { unclearNumber } from '#lib/units/printed';
import { rowId } from '../../../_forms/fields';
import { stepsFrom } from '../publish/swaps/steps-text';
import { ANY_STEP, FIELD } from './field-names';

type Texts = Readonly<Record<string, string>>;
type Fault = (field: string, message: string) => void;
type FreeLine = FitAsked['lines'][number];

const GONE = 'Something is missing: open the page again.';
const LONGEST_ID = 64;
/** Grams of a tonne, the most that any amount may be. */
const MOST_GRAMS = 1_000_000;

/** The form of a fit: which fields it has follows from the dish. */
export const fitForm = z
  .record(z.string().max(200, GONE), z.string().max(2000, 'This is too long for an amount.'))
  .transform((texts, context) => {
    const fault: Fault = (field, message) =>
      context.addIssue({ code: 'custom', path: [field], message });
    const place = z.object({ episodeId: rowId, segmentId: rowId }).safeParse(texts);
    if (!place.success) {
      fault('', GONE);
      return z.NEVER;
    }
    const limits = limitsOf(texts, fault);
    const targets = rows(texts, FIELD.target).flatMap(([id, text]) => (text === 'on' ? [id] : []));
    if (targets.length + limits.asked === 0) {
      fault('targets', 'Say what it should come to: tick a target, or write a least or a most.');
    }
    const lines = linesOf(texts, fault);
    const portionId = texts.portionId || null;
    if (portionId && portionId.length > LONGEST_ID) {
      fault('portionId', 'Choose what the limits are of.');
    }
    const asked: FitAsked = {
      ...{ targets, limits: limits.read, lines, strict: texts.strict === 'on', portionId },
    };
    return { ...place.data, asked };
  });

const rows = (texts: Texts, prefix: string) =>
  Object.entries(texts).flatMap(([name, text]) =>
    name.startsWith(prefix) ? [[name.slice(prefix.length), text.trim()] as const] : [],
  );

/** Limits of the person's own that can be read, and how many there are with those that cannot. */
function limitsOf(texts: Texts, fault: Fault) {
  let asked = 0;
  const read = (['atLeast', 'atMost'] as const).flatMap((relation) =>
    rows(texts, FIELD[relation]).flatMap(([nutrient, text]): FitAsked['limits'] => {
      if (text === '' || !isNutrient(nutrient)) return [];
      asked += 1;
      const amount = readNumber(text);
      const wrong =
        amount === null
          ? (unclearNumber(text) ?? 'Write a number of 0 or more, as 30 or 12.5.')
          : offBy(amount, { min: 0, max: MOST_ASKED });
      if (amount !== null && wrong === null) return [{ nutrient, relation, amount }];
      fault(`${FIELD[relation]}${nutrient}`, wrong ?? '');
      return [];
    }),
  );
  for (const { nutrient, amount } of read.filter(({ relation }) => relation === 'atLeast')) {
    const most = read.find((each) => each.relation === 'atMost' && each.nutrient === nutrient);
    if (most && most.amount < amount) {
      fault(`${FIELD.atMost}${nutrient}`, `${most.amount} is less than the least, ${amount}.`);
    }
  }
  return { read, asked };
}

/** The ingredients that may change. */
function linesOf(texts: Texts, fault: Fault): FreeLine[] {
  const free = rows(texts, FIELD.low).flatMap(([id]) =>
    texts[`${FIELD.fixed}${id}`] === 'on' ? [] : [id],
  );
  if (free.length === 0) {
    fault('lines', 'Every ingredient stays as it is: let at least one change.');
  }
  if (free.length > MOST_FREE) {
    fault(
      'lines',
      `At most ${MOST_FREE} ingredients can change in one search, and ${free.length} may: let others stay as they are.`,
    );
  }
  return free.flatMap((id) => lineOf(id, texts, fault) ?? []);
}

function lineOf(lineId: string, texts: Texts, fault: Fault): FreeLine | null {
  const lowMg = grams(`${FIELD.low}${lineId}`, texts, fault);
  const highMg = grams(`${FIELD.high}${lineId}`, texts, fault);
  const step = texts[`${FIELD.step}${lineId}`] ?? ANY_STEP;
  const stepMg = step === ANY_STEP ? null : readNumber(step);
  const stepIsWrong = stepMg === null ? step !== ANY_STEP : stepMg < LEAST_STEP_MG;
  if (stepIsWrong) fault(`${FIELD.step}${lineId}`, 'Choose a step.');
  if (lowMg === null || highMg === null || stepIsWrong) return null;
  if (lowMg > highMg) fault(`${FIELD.high}${lineId}`, 'The most is less than the least.');
  return { lineId, lowMg, highMg, stepMg };
}

/** Milligrams of an amount without a range; null where it cannot be read, which is said. */
function grams(field: string, texts: Texts, fault: Fault): number | null {
  const text = texts[field]?.trim() ?? '';
  const read = readGrams(text);
  if (read && read.lowMg === read.highMg) return read.valueMg;
  const plain = readNumber(text.replace(/ ?g$/, ''));
  const off = plain === null ? null : offBy(plain, { min: 0, max: MOST_GRAMS }, inGrams);
  fault(field, off ?? unclearNumber(text) ?? 'Write grams of 0 or more, as 120 or 12.5.');
  return null;
}

const inGrams = (value: number) => `${value} g`;

export const applyFitForm = z.object({
  episodeId: rowId,
  segmentId: rowId,
  steps: z.string().default('').transform(stepsFrom),
  /** The amounts that the page showed beside the new ones. */
  was: z.string().default(''),
});
