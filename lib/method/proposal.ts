import type { Oven } from '#lib/episode/kitchen-schema';
import type { Episode, Segment } from '#lib/episode/schema';
import type { Step } from '#lib/episode/step-schema';
import { contactsOf, type ReadContact, type StepContact } from '#lib/method/contact';
import { foundWords, noteOf, type Found } from '#lib/method/found-words';
import { learntTime, type Learnt } from '#lib/method/learnt-minutes';
import type { MethodStep, OvenSetting, ReadMethod } from '#lib/method/read-method';
import {
  addingRules,
  LONGER_THAN_A_DAY_S,
  shownRules,
  type Rule,
  type ShownRule,
} from '#lib/method/rules';
import type { LoggedStep } from '#lib/shoot/after-logged';
import type { AnimalFood } from '#lib/shoot/may-go-in-raw';

/** A step as it is offered, before the person has ticked or changed anything. */
export interface ProposedStep {
  /** Names it within the proposal: its place. */
  readonly key: string;
  readonly title: string;
  readonly role: Step['role'];
  readonly lowS: number;
  readonly usualS: number;
  readonly highS: number;
  readonly hands: boolean;
  readonly burners: number;
  /** 1 where it is in the oven, whose degrees are then needed. */
  readonly racks: number;
  readonly oven: OvenSetting | null;
  readonly coreMilliC: number | null;
  /** What its hands are taken to touch, with the words that say so; null where nothing does. */
  readonly contact: ReadContact | null;
  readonly note: string;
  /** Runs beside the step before it. */
  readonly meanwhile: boolean;
  /** The sentence it was read from. */
  readonly sentence: string;
  /** What was read, each with the words it was read from. */
  readonly found: readonly Found[];
  /** Ticked at first. */
  readonly ticked: boolean;
  /** Why it is not ticked, or what is still to be said; empty where nothing is. */
  readonly remark: string;
}

/** What a method comes to: its steps, the rules that add to them, and what the plan does anyway. */
export interface Proposal {
  readonly steps: readonly ProposedStep[];
  readonly rules: readonly Rule[];
  readonly shown: readonly ShownRule[];
}

/** Where a method is to be cooked. */
export interface ForDish {
  readonly ovens: readonly Oven[];
  readonly segment: Pick<Segment, 'washUpS'>;
  readonly region: Episode['region'];
  /** What steps took on this kitchen's filming days. */
  readonly logged?: readonly LoggedStep[];
  /** The dish's ingredients; null or left out where nobody has said what is in it. */
  readonly foods?: readonly AnimalFood[] | null;
}

/**
 * The steps of a method as they are offered, and the rules of this kitchen and dish. Nothing is added by it.
 * A step longer than a filming day is offered without its tick. Where the text says no minutes they are those of this
 * kitchen's logged days, if there are any like it.
 */
export function propose(method: ReadMethod, dish: ForDish): Proposal {
  const timed = method.steps.map((step) => {
    const learnt = learntTime(step, dish.logged ?? []);
    const guessed = step.read.minutes === null;
    return { step: guessed && learnt ? { ...step, time: learnt.time } : step, learnt };
  });
  const contacts = contactsOf(method.text, method.steps, dish.foods ?? null);
  return {
    steps: timed.map(({ step, learnt }, index) =>
      proposed(method, step, learnt, contacts[index] ?? UNSAID, index, dish.region),
    ),
    rules: addingRules(
      timed.map(({ step }) => step),
      dish.segment.washUpS,
      contacts,
    ),
    shown: shownRules(method, { ...dish, contacts }),
  };
}

const UNSAID: StepContact = { contact: null, rawAtStart: null };

function proposed(
  { text }: ReadMethod,
  step: MethodStep,
  learnt: Learnt | null,
  { contact, rawAtStart }: StepContact,
  index: number,
  region: Episode['region'],
): ProposedStep {
  const { read, time, oven } = step;
  const inOven = read.equipment === 'oven';
  const long = time.usualS >= LONGER_THAN_A_DAY_S;
  const said = long
    ? 'Longer than a filming day: begin it the evening before, or tick it.'
    : inOven && !oven
      ? 'No degrees in the text: say them, or take its tick away.'
      : rawAtStart
        ? `Your hands touch ${rawAtStart} before it runs by itself: a rule below adds a step for that, so that the clean-down after it is counted.`
        : '';
  return {
    key: String(index),
    title: step.title,
    role: step.role,
    ...time,
    hands: read.hands === 'by hand',
    burners: read.equipment === 'burner' ? 1 : 0,
    racks: inOven ? 1 : 0,
    oven,
    coreMilliC: step.insideMilliC,
    contact,
    note: noteOf(step),
    meanwhile: read.meanwhile && index > 0,
    sentence: text.slice(step.sentence.start, step.sentence.end),
    found: foundWords(text, step, region, learnt),
    ticked: !long,
    remark: said,
  };
}
