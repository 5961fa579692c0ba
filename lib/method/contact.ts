import type { Step } from '#lib/episode/step-schema';
import type { ActionKind, Stretch } from '#lib/method/method-step';
import { foodsInWords, type NamedFood } from '#lib/method/dish-foods';
import { alternatives } from '#lib/method/raw-words';
import type { MethodStep } from '#lib/method/read-method';
import type { AnimalFood } from '#lib/shoot/may-go-in-raw';

/** What a step's hands are taken to touch, and the words that say so. */
export interface ReadContact {
  readonly contact: NonNullable<Step['contact']>;
  /** The food or the action, as it stands in the text: "chicken", "salad", "plate". */
  readonly words: string;
}

/** What was read of a step: the contact that is proposed, and raw food that a step by itself begins with. */
export interface StepContact {
  readonly contact: ReadContact | null;
  /** Raw food that the hands touch at the start of a step that runs by itself; null for none. */
  readonly rawAtStart: string | null;
}

/** Eaten as it is, in the words of written methods, folded. Common practice, no source. */
const READY = alternatives(
  'salads? slaw coleslaw lettuce rocket arugula watercress cucumbers? radish(?:es)? fruits? berries strawberries ' +
    'raspberries blueberries blackberries cherries grapes? melons? mango(?:es)? bananas? kiwis? avocados? guacamole ' +
    'salsa hummus garnish garnishes dressing sandwich(?:es)?',
);
const READY_VERBS: ReadonlySet<string> = new Set([
  'garnish',
  'plate',
  'serve',
  'dress',
  'decorate',
]);

const HEATS: ReadonlySet<ActionKind> = new Set<ActionKind>([
  'oven',
  'boil',
  'fry',
  'heat',
  'grill',
  'airFry',
  'microwave',
]);
/** Food as a whole, so that whatever raw food is in it is cooked with it. */
const WHOLE = alternatives(
  'it them everything all tray dish tin pan skillet wok pot casserole loaf pie mixture batter filling skewers kebabs',
);
/** A heat that names nothing it is done to: "bake for 40 minutes". */
const BARE = new RegExp(
  String.raw`^\W*(?:and |then |now |,)*(?:[a-z-]+ )(?:for|until|till|at|in|on|over|to|uncovered|covered|gently|well|about|another|\d|$)`,
);
/** Work that has the hands at a food before a heat or a wait. */
const HANDLED = alternatives(
  'cut slice dice chop trim season rub coat mix combine shape form roll toss stuff brush press thread skewer ' +
    'pat peel shell devein skin pound flatten bone debone butterfly beat whisk crack break separate marinate arrange lay ' +
    'halve quarter cube shred joint spatchcock wash rinse wrap dredge dip dust bread glaze baste massage spread fill ' +
    'truss tie layer scatter score open divide portion lift drain',
);

/** Into a place, which takes raw food into the hands where nothing before it did. */
const PUT = alternatives('put place add transfer drop slide');
/** Stands for the food of the step before. */
const PRONOUN = /\b(?<!(?:until|once|when|if|as) )(?:it|them)\b/;

/**
 * What the hands touch in each step of a method, read from its words: raw animal food as long as no heat has reached
 * it, and what is eaten as it is, which cooked meat is from then on. Where both are in a step it is raw. Which food a
 * word means is asked of the dish's ingredients first: "the thighs" are its chicken, "the tuna" comes out of its tin.
 * It is a proposal: a word may be missed, and nothing is said of foods that are on no list.
 * @param foods animal food of the dish; null where nobody has said what is in it
 * @example contactsOf('Cut the chicken. Roast for 40 minutes. Carve the chicken.', steps)
 *   // rawAnimal by 'chicken', none, readyToEat by 'chicken'
 */
export function contactsOf(
  text: string,
  steps: readonly MethodStep[],
  foods: readonly AnimalFood[] | null = null,
): StepContact[] {
  const known = foodsInWords(foods ?? []);
  const raw = new Set<string>();
  const cooked = new Set<string>();
  /** The raw food that the step before touched. */
  let before: NamedFood | null = null;
  let handled = false;
  const found = steps.map((step, index): StepContact => {
    const own = fold(wordsAt(text, wordsOf(steps, index)));
    const named = known.namedIn(own);
    const isRaw = ({ keys }: NamedFood) => keys.some((key) => raw.has(key));
    for (const { keys, mayBeRaw } of named) {
      for (const key of keys) if (mayBeRaw && !cooked.has(key)) raw.add(key);
    }
    const meant = before !== null && isRaw(before) && PRONOUN.test(own) ? before : null;
    const touched = named.find(isRaw) ?? meant;
    const heats = HEATS.has(step.read.kind) || (step.read.kind === 'put' && isHot(step));
    const byHand = step.read.hands === 'by hand';
    if (heats) {
      const all = BARE.test(fold(wordsAt(text, step.read.words))) || own.search(WHOLE) >= 0;
      const reached = all || step.insideMilliC !== null ? [...raw] : named.flatMap(heated);
      for (const key of reached) {
        raw.delete(key);
        cooked.add(key);
      }
    }
    before = touched;
    if (touched === null) {
      return byHand && !heats
        ? { ...NONE, contact: readyContact(own, step.read.verb, named) }
        : NONE;
    }
    const atStart = own.search(HANDLED) >= 0 || (!handled && own.search(PUT) >= 0);
    handled ||= byHand || atStart;
    if (byHand) return { ...NONE, contact: { contact: 'rawAnimal', words: touched.words } };
    return { ...NONE, rawAtStart: atStart ? touched.words : null };
  });
  const cold = foods !== null && !known.anyRaw && !steps.some(isHeated);
  return cold && raw.size === 0 ? found.map((each, index) => eatenCold(each, steps[index])) : found;
}

const NONE: StepContact = { contact: null, rawAtStart: null };

/** What no heat reaches, in a dish that nothing goes into raw, is eaten as it is. */
function eatenCold(contact: StepContact, step: MethodStep | undefined): StepContact {
  if (step?.read.hands !== 'by hand' || contact.contact !== null) return contact;
  return { ...contact, contact: { contact: 'readyToEat', words: step.read.verb || step.title } };
}

/** Of several foods that a word may mean a heat surely reaches none. */
const heated = ({ keys }: NamedFood): readonly string[] => (keys.length === 1 ? keys : []);

function readyContact(own: string, verb: string, notRaw: readonly NamedFood[]): ReadContact | null {
  const found =
    notRaw[0]?.words ?? READY.exec(own)?.[1] ?? (READY_VERBS.has(verb) ? verb : undefined);
  return found === undefined ? null : { contact: 'readyToEat', words: found };
}

const isHeated = ({ read }: MethodStep): boolean => HEATS.has(read.kind) || read.preheats;

const isHot = ({ read }: MethodStep): boolean =>
  ['oven', 'air fryer', 'grill', 'microwave', 'burner'].includes(read.equipment);

/** The words of a step's sentence that are its own: from the end of the step before it there. */
function wordsOf(steps: readonly MethodStep[], index: number): Stretch {
  const step = steps[index];
  if (!step) return { start: 0, end: 0 };
  const same = (other: MethodStep | undefined) => other?.sentence === step.sentence;
  const [last, next] = [steps[index - 1], steps[index + 1]];
  return {
    start:
      same(last) && last
        ? Math.min(last.read.words.end, step.read.words.start)
        : step.sentence.start,
    end: same(next) ? step.read.words.end : step.sentence.end,
  };
}

const fold = (words: string): string => words.toLowerCase().replaceAll('’', "'");

const wordsAt = (text: string, { start, end }: Stretch): string => text.slice(start, end);
