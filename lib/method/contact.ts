import type { Step } from '#lib/episode/step-schema';
import type { ActionKind, Stretch } from '#lib/method/method-step';
import type { MethodStep } from '#lib/method/read-method';

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

/**
 * Raw animal food in the words of written methods, folded. Common practice of written recipes; what counts as raw
 * animal food is FDA Food Code 2022, 3-302.11(A): beef, fish, lamb, pork, poultry; and raw shell eggs.
 */
const RAW = alternatives(
  'chicken turkey duck goose poultry beef veal pork lamb mutton venison rabbit meat meatballs? steaks? burgers? ' +
    'patties bacon pancetta livers? giblets sausage-?meat sausages? fish salmon cod haddock pollock trout tuna ' +
    'mackerel seabass bream plaice halibut sole hake prawns? shrimps? scallops? mussels? clams? squid octopus ' +
    'lobster eggs? egg-?wash yolks? egg-?whites? fillets?',
);
const MINCE = String.raw`(?:the|your|raw|beef|pork|lamb|turkey|chicken)\s+mince`;
/** Before such a word: it is not raw, or not of an animal. */
const NOT_BEFORE = alternatives(
  'cooked pre-?cooked left-?over rotisserie tinned canned smoked cured dried jarred hard-boiled soft-boiled boiled ' +
    'poached fried scrambled roast roasted grilled baked vegan vegetarian veggie plant-based meat-free meatless mock',
);
/** After such a word: it names something else. */
const NOT_AFTER = alternatives(
  'stock broth bouillon cubes? sauce powder seasoning noodles? tomato(?:es)? slice timer cups? substitute salad ' +
    'shop pan brush',
);
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
  'cut slice dice chop trim score season rub coat mix combine shape form roll toss stuff brush press thread skewer ' +
    'pat peel shell devein skin pound flatten bone debone butterfly beat whisk crack break separate marinate arrange lay',
);

/**
 * What the hands touch in each step of a method, read from its words: raw animal food as long as no heat has reached
 * it, and what is eaten as it is, which cooked meat is from then on. Where both are in a step it is raw. It is a
 * proposal: a word may be missed, and nothing is said of foods that are on no list.
 * @example contactsOf('Cut the chicken. Roast for 40 minutes. Carve the chicken.', steps)
 *   // rawAnimal by 'chicken', none, readyToEat by 'chicken'
 */
export function contactsOf(text: string, steps: readonly MethodStep[]): StepContact[] {
  const raw = new Set<string>();
  const cooked = new Set<string>();
  return steps.map((step): StepContact => {
    const { read, sentence } = step;
    const alone = steps.filter((other) => other.sentence === sentence).length === 1;
    const own = fold(wordsAt(text, alone ? sentence : read.words));
    const foods = rawFoods(own);
    for (const food of foods) if (!cooked.has(food)) raw.add(food);
    const touched = foods.find((food) => raw.has(food)) ?? null;
    const heats = HEATS.has(read.kind) || (read.kind === 'put' && isHot(step));
    const byHand = read.hands === 'by hand';
    if (heats) {
      const all = BARE.test(fold(wordsAt(text, read.words))) || own.search(WHOLE) >= 0;
      for (const food of all || step.insideMilliC !== null ? [...raw] : foods) {
        raw.delete(food);
        cooked.add(food);
      }
    }
    if (touched !== null && byHand) return { ...NONE, contact: rawContact(touched) };
    if (touched !== null) return { ...NONE, rawAtStart: own.search(HANDLED) >= 0 ? touched : null };
    return byHand && !heats ? { ...NONE, contact: readyContact(own, read.verb, foods) } : NONE;
  });
}

const NONE: StepContact = { contact: null, rawAtStart: null };

const rawContact = (words: string): ReadContact => ({ contact: 'rawAnimal', words });

function readyContact(
  own: string,
  verb: string,
  cookedFoods: readonly string[],
): ReadContact | null {
  const found =
    cookedFoods[0] ?? READY.exec(own)?.[1] ?? (READY_VERBS.has(verb) ? verb : undefined);
  return found === undefined ? null : { contact: 'readyToEat', words: found };
}

const isHot = ({ read }: MethodStep): boolean =>
  ['oven', 'air fryer', 'grill', 'microwave', 'burner'].includes(read.equipment);

/** The raw animal foods that words name, as they stand, each once. */
function rawFoods(words: string): string[] {
  const found = [...words.matchAll(FOOD)].flatMap((match) => {
    const before = words.slice(0, match.index);
    const after = words.slice(match.index + match[0].length);
    const other = ENDS_NOT_BEFORE.test(before) || BEGINS_NOT_AFTER.test(after);
    return other ? [] : [singular(match[0].replace(/^(?:the|your|raw)\s+/, ''))];
  });
  return [...new Set(found)];
}

const FOOD = new RegExp(String.raw`${MINCE}\b|${RAW.source}`, 'g');
const ENDS_NOT_BEFORE = new RegExp(String.raw`${NOT_BEFORE.source}[\s-]+$`);
const BEGINS_NOT_AFTER = new RegExp(String.raw`^[\s-]+${NOT_AFTER.source}`);

/** One name for one food, so that "the eggs" later is the egg of before. */
const singular = (food: string): string =>
  /(?:ss|fish)$/.test(food) ? food : food.replace(/s$/, '');

function alternatives(words: string): RegExp {
  return new RegExp(String.raw`\b(${words.split(' ').join('|')})\b(?!-)`);
}

const fold = (words: string): string => words.toLowerCase().replaceAll('’', "'");

const wordsAt = (text: string, { start, end }: Stretch): string => text.slice(start, end);
