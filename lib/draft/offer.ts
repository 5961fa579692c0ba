import { readIngredient } from '#lib/episode/read-ingredient';
import { withoutSign } from '#lib/episode/read-ingredient-seasonings';
import type { Episode, Segment } from '#lib/episode/schema';
import { printRuntime } from '#lib/units/print';
import type { Draft, DraftLine, DraftSegment, From } from './draft';
import { methodText, saidSteps, type SaidStep } from './said-steps';
import { titleMeant, titlesShare, titleStems } from './same-title';
import { foldRow } from './text-rows';

/** One thing that the texts propose and the episode does not have, to be ticked. */
export type Offered = {
  /** Names it within the offer. */
  readonly key: string;
  /** What it is, in words for the person. */
  readonly words: string;
  readonly from: From;
} & (
  | { readonly kind: 'hook'; readonly text: string }
  | { readonly kind: 'disclosure'; readonly text: string }
  | { readonly kind: 'method'; readonly text: string }
  | { readonly kind: 'link'; readonly label: string; readonly url: string }
  | { readonly kind: 'times'; readonly inMs: number; readonly outMs: number | null }
  | { readonly kind: 'portions'; readonly count: number }
  /** `has`: the words of an ingredient of the dish that is the same food; not ticked then. */
  | { readonly kind: 'line'; readonly line: DraftLine; readonly has: string | null }
  | { readonly kind: 'step'; readonly step: SaidStep['step'] }
);

/** A stretch of the draft, and the segment of the episode that it is; null where it is a new one. */
export interface OfferedSegment {
  readonly key: string;
  readonly kind: DraftSegment['kind'];
  readonly title: string;
  readonly from: From;
  readonly into: string | null;
  readonly parts: readonly Offered[];
}

/** All that the texts propose beyond what the episode has. */
export interface Offer {
  readonly episode: readonly Offered[];
  readonly segments: readonly OfferedSegment[];
}

type Standing = Pick<Episode, 'hook' | 'disclosure' | 'webLinks' | 'segments' | 'region'>;

/** An episode that has nothing yet. */
export const nothingYet = (region: 'US' | 'EU'): Standing => ({
  hook: '',
  disclosure: '',
  webLinks: [],
  segments: [],
  region,
});

/**
 * What a draft offers to an episode: all of it to an empty one; to another, what it does not have. A stretch that has
 * the title of a segment is that segment, and of it only ingredients, portions, method, steps and times that are not
 * there are offered; nothing that is there is changed.
 */
export function offerOf(draft: Draft, episode: Standing): Offer {
  const into = matched(draft.segments, episode.segments);
  return {
    episode: ofEpisode(draft, episode),
    segments: draft.segments.flatMap((segment, at): OfferedSegment[] => {
      const standing = episode.segments.find(({ id }) => id === into[at]) ?? null;
      const parts = partsOf(segment, `s${at}`, standing, episode.region);
      if (standing && parts.length === 0) return [];
      const { kind, title, from } = segment;
      return [{ key: `s${at}`, kind, title, from, into: standing?.id ?? null, parts }];
    }),
  };
}

function ofEpisode(draft: Draft, episode: Standing): Offered[] {
  const { hook, disclosure, links } = draft;
  const has = new Set(episode.webLinks.map(({ url }) => url));
  const offered: Offered[] = [];
  if (hook && episode.hook === '')
    offered.push({ key: 'hook', kind: 'hook', text: hook.text, words: hook.text, from: hook.from });
  links.forEach(({ label, url, from }, index) => {
    if (has.has(url)) return;
    has.add(url);
    offered.push({
      key: `link${index}`,
      kind: 'link',
      label,
      url,
      words: `${label}: ${url}`,
      from,
    });
  });
  if (disclosure && episode.disclosure === '') {
    const { text, from } = disclosure;
    offered.push({ key: 'disclosure', kind: 'disclosure', text, words: text, from });
  }
  return offered;
}

/** Ids of the segments that stretches are, by their titles, each once; null for new ones. */
function matched(
  drafted: readonly DraftSegment[],
  standing: readonly Segment[],
): readonly (string | null)[] {
  const taken = new Set<string>();
  return drafted.map(({ title, kind }) => {
    const free = standing.filter((segment) => segment.kind === kind && !taken.has(segment.id));
    const same = free.find((segment) => foldRow(segment.title) === foldRow(title));
    const stems = free.map((segment) => titleStems(segment.title));
    const found = same ?? (kind === 'recipe' ? free[titleMeant(title, stems)] : undefined);
    if (found) taken.add(found.id);
    return found?.id ?? null;
  });
}

function partsOf(
  segment: DraftSegment,
  key: string,
  standing: Segment | null,
  region: 'US' | 'EU',
): Offered[] {
  const { inMs, outMs, lines, portions, method, from } = segment;
  const parts: Offered[] = [];
  if (inMs !== null && (standing === null || standing.inFrame === null)) {
    const words = `From ${clock(inMs)}${outMs === null ? '' : ` to ${clock(outMs)}`} in the edit`;
    parts.push({ key: `${key}-times`, kind: 'times', inMs, outMs, words, from });
  }
  if (segment.kind === 'talk') return parts;
  const recipe = standing?.recipe ?? null;
  const has = new Set((recipe?.lines ?? []).map(({ text }) => foldRow(text)));
  lines.forEach((line, index) => {
    if (recipe && line.parts.every(({ text }) => has.has(foldRow(withoutSign(text))))) return;
    const same = recipe?.lines.find(({ text }) => isSameFood(line, text));
    parts.push({
      key: `${key}-line${index}`,
      kind: 'line',
      line,
      has: same?.text ?? null,
      words: line.text,
      from: line.from,
    });
  });
  if (portions && portions.count > 1 && (recipe?.portions ?? []).length === 0) {
    const { count } = portions;
    const words = `${count} equal portions`;
    parts.push({ key: `${key}-portions`, kind: 'portions', count, words, from: portions.from });
  }
  const [first] = method;
  const text = methodText(method);
  if (first && (recipe?.method ?? '') === '')
    parts.push({ key: `${key}-method`, kind: 'method', text, words: text, from: first.from });
  if ((standing?.steps ?? []).length === 0) {
    saidSteps(segment, region).forEach(({ step, from: place }, index) =>
      parts.push({
        key: `${key}-step${index}`,
        kind: 'step',
        step,
        words: step.title,
        from: place,
      }),
    );
  }
  return parts;
}

/** Whether an ingredient names the food that the words of another name, in whatever amount. */
function isSameFood({ parts }: DraftLine, other: string): boolean {
  const foods = readIngredient(other).map(({ food }) => titleStems(food));
  return parts.some(({ food }) =>
    foods.some((stems) => titlesShare(titleStems(food), stems) === 1),
  );
}

const clock = (ms: number) => printRuntime(Math.floor(ms / 1000));

/**
 * The offer as far as it is ticked. A new segment that is not ticked takes its parts with it.
 * @param ticked whether a key is
 */
export function ticked(offer: Offer, isTicked: (key: string) => boolean): Offer {
  return {
    episode: offer.episode.filter(({ key }) => isTicked(key)),
    segments: offer.segments
      .filter(({ key, into }) => into !== null || isTicked(key))
      .map((segment) => ({ ...segment, parts: segment.parts.filter(({ key }) => isTicked(key)) }))
      .filter(({ into, parts }) => into === null || parts.length > 0),
  };
}

/** How many things an offer has: its segments that are new, and all parts. */
export function countOf({ episode, segments }: Offer): number {
  return segments.reduce(
    (sum, { into, parts }) => sum + (into === null ? 1 : 0) + parts.length,
    episode.length,
  );
}
