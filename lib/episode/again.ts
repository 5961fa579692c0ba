import { amountContext, type AmountContext } from '#lib/episode/context';
import { lineAmount } from '#lib/episode/line-amount';
import type { Kitchen } from '#lib/episode/kitchen-schema';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import type { Episode, EpisodeFile, Segment } from '#lib/episode/schema';
import type { Step, StepLink } from '#lib/episode/step-schema';
import { evaluate } from '#lib/units/sum-of-products';

/** What an ingredient of the copy is planned with: what was weighed last, or what was planned before that. */
export type AgainAmounts = 'weighed' | 'planned';

/** Something that could not come along, in words that name it. */
export interface AgainNote {
  readonly code: 'tie' | 'standing' | 'shot' | 'oven' | 'appliance' | 'finished' | 'disclosure';
  readonly message: string;
}

export interface AgainOptions {
  /** Without it, what was weighed wins. */
  readonly amounts?: AgainAmounts | undefined;
  /** The kitchen that the copy is for; the original's own where it is not said. */
  readonly kitchen?: Pick<Kitchen, 'ovens' | 'appliances'> | undefined;
}

export interface DishAgain {
  /** Under the ids of the original, which are local names: the store gives each a new one. */
  readonly segment: Segment;
  /** Ties between the segment's own steps. */
  readonly links: readonly StepLink[];
  readonly notes: readonly AgainNote[];
}

export interface EpisodeAgain {
  readonly episode: Episode;
  readonly notes: readonly AgainNote[];
}

/** What a note needs to know of the episode that a copy is made of. */
interface Source {
  readonly context: AmountContext;
  readonly steps: ReadonlyMap<string, { readonly step: Step; readonly of: string }>;
  /** Ids of the steps that are copied. */
  readonly copied: ReadonlySet<string>;
  /** Ids of the ovens and appliances that the copy may use. */
  readonly placeIds: ReadonlySet<string>;
  readonly amounts: AgainAmounts;
}

/**
 * A segment as it begins anew: foods, states, measures, portions, method, steps with the ties among them,
 * shots, perishables, talking points with their bound numbers, and spare takes. What was weighed becomes what
 * is planned. Readings and the place in the cut stay behind; a tie to a step outside is dropped and named.
 *
 * Law: the figures of the copy have the values of the original's, where each weighed ingredient is planned with
 * its weighed grams. The bounds differ: planned grams are ± half a resolution of the kitchen's first scale, a
 * reading has its own scale, method, accuracy, and may be shared. The copy of a copy is the same.
 *
 * @param from the episode that holds the segment, with the foods and kitchen its readings rest on
 * @example an ingredient '200 g skyr' that was weighed at 212 g: planned 212 g in the copy
 */
export function dishAgain(
  from: EpisodeFile,
  segment: Segment,
  options: AgainOptions = {},
): DishAgain {
  const source = sourceOf(from, new Set(segment.steps.map(({ id }) => id)), options);
  const { links } = from.episode;
  return {
    segment: segmentAgain(segment, source),
    links: links.filter((link) => staysWithin(link, source)),
    notes: [...tieNotes(links, source), ...segmentNotes(segment, source)],
  };
}

/**
 * An episode as it begins anew, all segments as in `dishAgain`, with every tie, its targets and its links. Its
 * publish date and the answer to what else was eaten belong to that one day and stay behind, as do locks,
 * published texts and the filming day.
 */
export function episodeAgain(from: EpisodeFile, options: AgainOptions = {}): EpisodeAgain {
  const { episode } = from;
  const steps = episode.segments.flatMap((segment) => segment.steps);
  const source = sourceOf(from, new Set(steps.map(({ id }) => id)), options);
  const words = 'The wording on what was given or paid came along: see whether it holds again.';
  const disclosure: AgainNote[] =
    episode.disclosure === '' ? [] : [{ code: 'disclosure', message: words }];
  return {
    episode: {
      ...episode,
      title: againTitle(episode.title),
      publishOn: null,
      anythingElse: null,
      segments: episode.segments.map((segment) => segmentAgain(segment, source)),
      links: episode.links.filter((link) => staysWithin(link, source)),
    },
    notes: [...episode.segments.flatMap((segment) => segmentNotes(segment, source)), ...disclosure],
  };
}

const AGAIN = ' (again)';
const LONGEST_TITLE = 160;

/** `againTitle('Late shift')` → `'Late shift (again)'`; a title that says so already stays. */
export function againTitle(title: string): string {
  if (title.endsWith(AGAIN)) return title;
  // Cut between characters: half of a pair is no text.
  const kept = [...title.slice(0, LONGEST_TITLE - AGAIN.length)];
  if (/^[\uD800-\uDBFF]$/.test(kept.at(-1) ?? '')) kept.pop();
  return `${kept.join('').trimEnd()}${AGAIN}`;
}

function sourceOf(
  from: EpisodeFile,
  copied: ReadonlySet<string>,
  { amounts = 'weighed', kitchen = from.kitchen }: AgainOptions,
): Source {
  const { segments } = from.episode;
  return {
    context: amountContext(from),
    steps: new Map(
      segments.flatMap(({ steps, title }) => steps.map((step) => [step.id, { step, of: title }])),
    ),
    copied,
    placeIds: new Set([...kitchen.ovens, ...kitchen.appliances].map(({ id }) => id)),
    amounts,
  };
}

interface Ends {
  readonly fromStepId: string;
  readonly toStepId: string;
}

function staysWithin({ fromStepId, toStepId }: Ends, { copied }: Source): boolean {
  return copied.has(fromStepId) && copied.has(toStepId);
}

function segmentAgain(segment: Segment, source: Source): Segment {
  return {
    ...segment,
    inFrame: null,
    outFrame: null,
    chapter: true,
    recipe: segment.recipe && recipeAgain(segment.recipe, source),
    steps: segment.steps.map((step) => ({
      ...step,
      oven: step.oven && strangeOven(step, source) ? { ...step.oven, ovenId: null } : step.oven,
      applianceId: strangeAppliance(step, source) ? null : step.applianceId,
    })),
    perishables: segment.perishables.map((perishable) => ({
      ...perishable,
      spans: perishable.spans.filter((span) => staysWithin(span, source)),
    })),
    shots: segment.shots.map((shot) =>
      isLoose(shot.stepId, source) ? { ...shot, stepId: null } : shot,
    ),
  };
}

function recipeAgain(recipe: Recipe, source: Source): Recipe {
  return {
    ...recipe,
    lines: recipe.lines.map((line) => lineAgain(line, recipe, source)),
    weighings: [],
  };
}

function lineAgain(line: RecipeLine, { weighings }: Recipe, source: Source): RecipeLine {
  if (source.amounts === 'planned') return line;
  const grams = lastWeighedMg(line, weighings, source.context);
  return grams === null
    ? line
    : { ...line, planned: { lowMg: grams, valueMg: grams, highMg: grams } };
}

/**
 * What an ingredient weighed, all its readings and shares together, in whole milligrams; null where it was
 * not weighed. A third of a reading of 100 g is 33 333 mg.
 */
export function lastWeighedMg(
  line: RecipeLine,
  weighings: Recipe['weighings'],
  context: AmountContext,
): number | null {
  const isWeighed = weighings.some(
    ({ kind, shares }) => kind === 'raw' && shares.some(({ lineId }) => lineId === line.id),
  );
  if (!isWeighed) return null;
  const { massMg, sources } = lineAmount(line, weighings, context);
  if (!massMg) return null;
  const values = new Map([...sources].map(([id, { value }]) => [id, value]));
  return Math.max(0, Math.round(evaluate(massMg, values)));
}

function isLoose(stepId: string | null, { copied }: Source): boolean {
  return stepId !== null && !copied.has(stepId);
}

function strangeOven(step: Step, { placeIds }: Source): boolean {
  const ovenId = step.oven?.ovenId ?? null;
  return ovenId !== null && !placeIds.has(ovenId);
}

function strangeAppliance({ applianceId }: Step, { placeIds }: Source): boolean {
  return applianceId !== null && !placeIds.has(applianceId);
}

/** Ties that have one end here and the other outside. */
function tieNotes(links: readonly StepLink[], source: Source): AgainNote[] {
  return links
    .filter((link) => source.copied.has(link.fromStepId) !== source.copied.has(link.toStepId))
    .map((link) => ({
      code: 'tie',
      message:
        `The tie from ${stepName(link.fromStepId, source)} to ${stepName(link.toStepId, source)} ` +
        `stayed behind${link.reason === '' ? '' : ` (${link.reason})`}.`,
    }));
}

function segmentNotes(segment: Segment, source: Source): AgainNote[] {
  const notes: AgainNote[] = [];
  for (const { name, spans } of segment.perishables) {
    if (spans.every((span) => staysWithin(span, source))) continue;
    const message = `${name}: a time out of the fridge reaches into another segment and stayed behind.`;
    notes.push({ code: 'standing', message });
  }
  for (const shot of segment.shots) {
    if (!isLoose(shot.stepId, source)) continue;
    const during = stepName(shot.stepId ?? '', source);
    notes.push({
      code: 'shot',
      message: `The shot “${shot.title}” stands alone now: it was got during ${during}.`,
    });
  }
  for (const step of segment.steps) {
    if (strangeOven(step, source)) {
      const message = `“${step.title}” may take any oven now: its own stands in another kitchen.`;
      notes.push({ code: 'oven', message });
    }
    if (strangeAppliance(step, source)) {
      const message = `“${step.title}” has no appliance now: its own stands in another kitchen.`;
      notes.push({ code: 'appliance', message });
    }
  }
  if (waitsForFinishedWeight(segment)) {
    const message = `${segment.title}: portions by grams wait until the finished dish is weighed again.`;
    notes.push({ code: 'finished', message });
  }
  return notes;
}

function waitsForFinishedWeight({ recipe }: Segment): boolean {
  if (!recipe) return false;
  return (
    recipe.portions.some(({ kind }) => kind === 'mass') &&
    recipe.weighings.some(({ kind }) => kind === 'finished')
  );
}

function stepName(id: string, { steps, copied }: Source): string {
  const known = steps.get(id);
  if (!known) return 'a step';
  return copied.has(id) ? `“${known.step.title}”` : `“${known.step.title}” (${known.of})`;
}
