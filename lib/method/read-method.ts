import type { Step } from '#lib/episode/step-schema';
import { CORE_MILLI_C, MOST_STEPS, OVEN_MILLI_C } from '#lib/episode/step-limits';
import { failed, ok, type Problem, type Result } from '#lib/result';
import { milliCOf } from '#lib/method/gas-mark';
import type { ReadStep, Setting, Stretch } from '#lib/method/method-step';
import { readSentence } from '#lib/method/read-sentence';
import { stepTitle } from '#lib/method/step-title';
import { cleanMethod, LONGEST_METHOD, MOST_SENTENCES, sentencesOf } from '#lib/method/text';
import { stepTime, type StepTime } from '#lib/method/usual-minutes';

/** The oven's setting of a step, in thousandths of a degree Celsius. */
export interface OvenSetting {
  readonly milliC: number;
  readonly setting: Setting;
  readonly from: Stretch | null;
  /** Said by an earlier sentence ('Preheat the oven to 180C'). */
  readonly earlier: boolean;
}

/** A step as it is proposed from a method. */
export interface MethodStep {
  /** The sentence's own words, short. */
  readonly title: string;
  readonly role: Step['role'];
  readonly time: StepTime;
  /** Null where the step is not in the oven, or no degrees are known for it. */
  readonly oven: OvenSetting | null;
  readonly insideMilliC: number | null;
  /** The whole sentence. */
  readonly sentence: Stretch;
  readonly read: ReadStep;
}

/** A method as it was read; every stretch is one of `text`. */
export interface ReadMethod {
  readonly text: string;
  readonly steps: readonly MethodStep[];
  /** The heating of an oven that the text asks for: no step, for the plan makes it. */
  readonly ovenHeatings: readonly MethodStep[];
}

/**
 * Steps from a method as it was pasted, in its order, one for each timed or tempered action. A bake whose sentence
 * names no degrees keeps those of the oven before it. Nothing throws: a text that is empty, too long or asks for
 * nothing is refused in words, at the field `method`.
 * @param region which figure of several is taken for the oven: °F in the US, else °C
 */
export function readMethod(text: string, region: 'US' | 'EU'): Result<ReadMethod> {
  if (text.length > LONGEST_METHOD) {
    const more = text.length - LONGEST_METHOD;
    return refusal(
      'too-long',
      `A method of at most ${LONGEST_METHOD} characters is read: this is ${more} too many. Paste that of one dish.`,
    );
  }
  const clean = cleanMethod(text);
  const sentences = sentencesOf(clean);
  if (sentences.length === 0)
    return refusal('empty', 'Paste or write the method, as in “Bake for 20 minutes at 180 °C.”');
  if (sentences.length > MOST_SENTENCES) {
    return refusal(
      'too-many',
      `At most ${MOST_SENTENCES} sentences are read: these are ${sentences.length}. Paste the method of one dish.`,
    );
  }
  const steps = stepsOf(clean, sentences, region);
  if (steps.length === 0) {
    return refusal(
      'none',
      'No step was found in this text. Say what is to be done, as in “Bake for 20 minutes at 180 °C.”',
    );
  }
  if (steps.length > MOST_STEPS) {
    return refusal(
      'too-many',
      `A dish holds ${MOST_STEPS} steps: these are ${steps.length}. Paste the method of one dish.`,
    );
  }
  const heats = ({ read }: MethodStep) => read.preheats && read.equipment === 'oven';
  const [ovenHeatings, rest] = [steps.filter(heats), steps.filter((step) => !heats(step))];
  return ok({ text: clean, steps: rest, ovenHeatings });
}

function refusal(code: string, message: string): Result<never> {
  const problem: Problem = { path: 'method', code, message };
  return failed(problem);
}

function stepsOf(text: string, sentences: readonly Stretch[], region: 'US' | 'EU'): MethodStep[] {
  let oven: OvenSetting | null = null;
  return sentences.flatMap((sentence) =>
    readSentence(text.slice(sentence.start, sentence.end), sentence.start).map(
      (read): MethodStep => {
        const own = read.equipment === 'oven' ? ovenSetting(read, region) : null;
        if (own) oven = own;
        const carried = read.equipment === 'oven' && oven ? { ...oven, earlier: true } : null;
        const cuts = [read.minutesFrom, read.degreesFrom, read.insideFrom];
        const inside = read.inside === null ? null : milliCOf(read.inside);
        return {
          title: stepTitle(text, read.words, cuts, read.verb),
          role: roleOf(read),
          time: stepTime(read),
          oven: own ?? carried,
          insideMilliC: inside !== null && isWithin(inside, CORE_MILLI_C) ? inside : null,
          sentence,
          read,
        };
      },
    ),
  );
}

function isWithin(milliC: number, { min, max }: { readonly min: number; readonly max: number }) {
  return milliC >= min && milliC <= max;
}

/** The figure that the oven is set to: without a fan if one is said, in the region's unit if one is. */
function ovenSetting({ degrees, degreesFrom }: ReadStep, region: 'US' | 'EU'): OvenSetting | null {
  const unit = region === 'US' ? 'F' : 'C';
  const rank = (setting: Setting) => (setting.fan ? 2 : 0) + (setting.unit === unit ? 0 : 1);
  const fitting = degrees.flatMap((setting) => {
    const milliC = milliCOf(setting);
    return milliC !== null && isWithin(milliC, OVEN_MILLI_C) ? [{ setting, milliC }] : [];
  });
  const [best] = fitting.sort((a, b) => rank(a.setting) - rank(b.setting));
  return best ? { ...best, from: degreesFrom, earlier: false } : null;
}

function roleOf({ equipment, hands, preheats, kind }: ReadStep): Step['role'] {
  const cold = equipment === 'fridge' || equipment === 'freezer';
  if (preheats || cold) return 'wait';
  if (equipment !== 'none') return 'cook';
  return hands === 'by hand' || kind === 'prep' ? 'prep' : 'wait';
}
