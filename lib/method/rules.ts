import type { Oven } from '#lib/episode/kitchen-schema';
import type { Episode, Segment } from '#lib/episode/schema';
import type { Step } from '#lib/episode/step-schema';
import type { StepContact } from '#lib/method/contact';
import type { MethodStep, ReadMethod } from '#lib/method/read-method';
import { degreesText } from '#lib/shoot/day-words';
import { changeMin } from '#lib/shoot/minutes';
import { minutesSaid } from '#lib/units/read-typed';

/** Rules that add to a method's steps, each of which can be switched off. */
export const RULE_NAMES = ['rawFirst', 'turn', 'look', 'rest', 'washUp'] as const;
export type RuleName = (typeof RULE_NAMES)[number];

/** A step that a rule adds: before the step at a place, during it, or after it. */
export interface RuleStep {
  readonly title: string;
  readonly role: Step['role'];
  readonly hands: boolean;
  /** The key of the step it belongs to. */
  readonly of: string;
  readonly when: 'before' | 'halfway' | 'after';
  readonly contact: Step['contact'];
}

/** A rule that adds something, with the minutes that it takes at first. */
export interface Rule {
  readonly name: RuleName;
  readonly title: string;
  readonly words: string;
  /** Where it comes from. */
  readonly basis: string;
  readonly usualS: number;
  readonly steps: readonly RuleStep[];
}

/** What the plan does anyway and nothing is added for. */
export interface ShownRule {
  readonly title: string;
  readonly words: string;
  readonly basis: string;
}

const COMMON = 'Common practice, no source.';
/** A bake is looked at halfway from so long on: common practice, no source. */
export const LONG_BAKE_S = 30 * 60;
/** What was in the oven or on the grill so long rests before it is cut: common practice, no source. */
const LEAST_HOT_S = 15 * 60;
/** Whatever takes longer is begun the evening before: common practice, no source. */
export const LONGER_THAN_A_DAY_S = 6 * 3600;
/** What each rule's step takes at first, in seconds: common practice, no source. */
const USUAL_S: Readonly<Record<RuleName, number>> = {
  rawFirst: 300,
  turn: 60,
  look: 60,
  rest: 600,
  washUp: 600,
};

/** Whether a step runs by itself where it can be turned or looked at. */
const unwatched = ({ read }: MethodStep): boolean => read.hands === 'by itself';

/**
 * The rules that have something to add to these steps, in the order of `RULE_NAMES`. A turn that the text asks for
 * is the look halfway too; a rest that the text asks for is not added twice, nor is washing up where the dish has it.
 * @param washUpS the washing up that the dish has already, in seconds
 * @param contacts what the hands touch in each step
 */
export function addingRules(
  steps: readonly MethodStep[],
  washUpS: number,
  contacts: readonly StepContact[] = [],
): Rule[] {
  const keyed = steps.map((step, index) => ({ step, of: String(index) }));
  const turned = keyed.filter(({ step }) => step.read.halfway !== null && unwatched(step));
  const looked = keyed.filter(
    ({ step }) =>
      step.read.halfway === null &&
      step.read.equipment === 'oven' &&
      unwatched(step) &&
      step.time.usualS >= LONG_BAKE_S,
  );
  const hot = keyed.findLast(({ step }) => /^(?:oven|grill)$/.test(step.read.equipment));
  const rested = hot && steps.slice(Number(hot.of) + 1).some(({ role }) => role === 'wait');
  const rules: Rule[] = [
    {
      name: 'rawFirst',
      title: 'Raw food by hand first',
      words:
        'A step for the hands before what then runs by itself, where they touch raw meat, poultry, fish or egg, so that the clean-down comes after it.',
      basis: `FDA Food Code 2022, 3-302.11. Its minutes: ${COMMON}`,
      usualS: USUAL_S.rawFirst,
      steps: contacts.flatMap(({ rawAtStart }, index) =>
        rawAtStart === null
          ? []
          : [
              {
                title: `Raw ${rawAtStart} by hand`,
                role: 'prep',
                hands: true,
                of: String(index),
                when: 'before',
                contact: 'rawAnimal',
              },
            ],
      ),
    },
    {
      name: 'turn',
      title: 'Turning',
      words: 'A step for the hands halfway through, where the text says so.',
      basis: 'Said in the text.',
      usualS: USUAL_S.turn,
      steps: turned.map(({ step, of }) => ({
        title: halfwayTitle(step),
        role: 'cook',
        hands: true,
        of,
        when: 'halfway',
        contact: null,
      })),
    },
    {
      name: 'look',
      title: 'A look halfway',
      words: `A look into the oven halfway through whatever bakes for ${minutesSaid(LONG_BAKE_S)} or longer.`,
      basis: COMMON,
      usualS: USUAL_S.look,
      steps: looked.map(({ step, of }) => ({
        title: `Look in halfway: ${lower(step.title)}`,
        role: 'cook',
        hands: true,
        of,
        when: 'halfway',
        contact: null,
      })),
    },
    {
      name: 'rest',
      title: 'Rest before cutting',
      words: 'What comes out of the oven or off the grill last stands before it is cut.',
      basis: `The text says no rest. ${COMMON}`,
      usualS: USUAL_S.rest,
      steps:
        hot && !rested && hot.step.time.usualS >= LEAST_HOT_S
          ? [
              {
                title: 'Let it rest before it is cut',
                role: 'wait',
                hands: false,
                of: hot.of,
                when: 'after',
                contact: null,
              },
            ]
          : [],
    },
  ];
  const adding = rules.filter((rule) => rule.steps.length > 0);
  return washUpS > 0 ? adding : [...adding, WASH_UP];
}

const WASH_UP: Rule = {
  name: 'washUp',
  title: 'Washing up',
  words: 'One washing up for this dish, after whatever gets things dirty and before wrap.',
  basis: COMMON,
  usualS: USUAL_S.washUp,
  steps: [],
};

function halfwayTitle({ read, title }: MethodStep): string {
  const verb = read.halfway ?? 'turn';
  return `${verb.charAt(0).toUpperCase()}${verb.slice(1)} halfway: ${lower(title)}`;
}

const lower = (title: string): string => title.charAt(0).toLowerCase() + title.slice(1);

/**
 * What the plan makes by itself: heating and cooling of the ovens from their measured times, and the dish's washing
 * up. Told so that nobody adds it again.
 */
export function shownRules(
  method: ReadMethod,
  {
    ovens,
    segment,
    region,
    contacts,
  }: {
    readonly ovens: readonly Oven[];
    readonly segment: Pick<Segment, 'washUpS'>;
    readonly region: Episode['region'];
    readonly contacts: readonly StepContact[];
  },
): ShownRule[] {
  const heated = method.steps.some(({ read }) => read.equipment === 'oven');
  const washing: ShownRule = {
    title: 'Washing up',
    words: `This dish has ${minutesSaid(segment.washUpS)} of it already, and the plan finds their place before wrap.`,
    basis: 'From the dish.',
  };
  return [
    ...(heated || method.ovenHeatings.length > 0 ? [heatingOf(method, ovens, region)] : []),
    ...(contacts.some(isRaw) ? [CLEAN_DOWN] : []),
    ...(segment.washUpS > 0 ? [washing] : []),
  ];
}

const isRaw = ({ contact, rawAtStart }: StepContact): boolean =>
  rawAtStart !== null || contact?.contact === 'rawAnimal';

const CLEAN_DOWN: ShownRule = {
  title: 'Clean-down',
  words:
    'The plan cleans hands, board and counter after the last step that touches raw meat, poultry, fish or egg, and before any that touches food eaten as it is. What a step touches was read from its words: take off what is wrong, and say in the step what was missed.',
  basis: 'FDA Food Code 2022, 3-302.11 and 2-301.14; your local code comes first.',
};

function heatingOf(
  { text, steps, ovenHeatings }: ReadMethod,
  ovens: readonly Oven[],
  region: Episode['region'],
): ShownRule {
  const title = 'Heating the oven';
  const first = ovenHeatings[0];
  const said = first
    ? ` The text says it too (“${text.slice(first.read.words.start, first.read.words.end)}”); no step is added for it.`
    : '';
  const milliC = (steps.find(({ oven }) => oven !== null)?.oven ?? first?.oven)?.milliC;
  const [oven] = ovens;
  if (!oven || milliC === undefined) {
    return {
      title,
      words: `The plan heats the oven before each step that needs it.${said}`,
      basis: oven ? 'From the kitchen.' : 'Your kitchen has no oven yet: add it there.',
    };
  }
  const measured = oven.changes.some(
    ({ fromMilliC, toMilliC }) => fromMilliC === oven.coldMilliC && toMilliC === milliC,
  );
  const takes = `${oven.name} takes ${changeMin(oven, oven.coldMilliC, milliC)} min from cold to ${degreesText(milliC, region)}`;
  return {
    title,
    words: `The plan heats the oven before each step that needs it: ${takes}.${said}`,
    basis: measured ? 'Measured in your kitchen.' : 'By your kitchen’s seconds per degree.',
  };
}
