import type {
  ClaimWorking,
  HeldAgainst,
  Judged,
  Misheard,
  StatementPlace,
  Verdict,
} from '#lib/claims/judged';
import { FREE_FROM_CAUTION } from '#lib/claims/free-from/free-from-caution';
import type { PutAside } from '#lib/claims/read-edit';
import { oneLine, sentenceAround } from '#lib/claims/sentence-around';
import { waysToMend, type Placed, type WaysToMend } from '#lib/claims/ways-to-mend';
import { heardAround } from '#lib/cut/heard-around';
import { episodeRate, framesIn, printTimecode } from '#lib/cut/timecode';
import type { DishClaims, Mend } from '#lib/episode/edit-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { howWords, STAGES } from '#lib/overview/how-words';
import { KIND_WORDS, type SaidKind } from '#lib/overview/said-kinds';
import { printRuntime } from '#lib/units/print';

/** How a statement stands: its verdict, or put aside by the person. */
export type Standing = Verdict | 'aside';

/** A place in the edit as it is read: '0:01:02:10 to 0:01:05:00'. */
export interface Span {
  readonly from: string;
  readonly to: string;
}

/** A statement as a page shows it, in words. */
export interface SaidRow {
  readonly id: string;
  readonly textId: string;
  readonly kind: SaidKind;
  /** Its stretch of the text. */
  readonly start: number;
  readonly end: number;
  readonly startMs: number | null;
  /** '3:10', or where it has no time 'description, line 4'. */
  readonly place: string;
  /** The same as frames are counted; null where it has no time. */
  readonly timecode: Span | null;
  readonly words: string;
  /** The sentence in which it stands. */
  readonly sentence: string;
  readonly standing: Standing;
  /** 'agrees with your breakdown', 'off by 38 calories'. */
  readonly verdict: string;
  /** Which pan of the balance hangs lower. */
  readonly heavier: 'said' | 'breakdown';
  readonly why: string;
  readonly difference: string | null;
  readonly sayInstead: string | null;
  readonly remark: string | null;
  /** What nobody may take the verdict for; null where the page's own words are enough. */
  readonly caution: string | null;
  readonly against: HeldAgainst | null;
  readonly misheard: readonly Misheard[];
  readonly how: readonly HowStep[];
  readonly mend: {
    readonly id: string;
    readonly words: string;
    readonly kind: Mend['kind'];
  } | null;
  readonly segmentId: string | null;
  /** Title of the dish that is talked about. */
  readonly dish: string | null;
  /** How a claim word was judged, with what the person said of its dish; null where it is none of a dish. */
  readonly claim: SaidClaim | null;
  /** Five seconds around it, in seconds from the beginning of the edit. */
  readonly heard: { readonly fromS: number; readonly toS: number } | null;
  readonly ways: {
    readonly card: (Span & { readonly words: string }) | null;
    readonly cut: Span | null;
    readonly sentence: WaysToMend['sentence'];
  };
}

export interface SaidClaim extends ClaimWorking {
  /** Whether the rules ask anything of the person: in the Union they do not. */
  readonly asks: boolean;
  readonly said: DishClaims | null;
}

/** One step of a reading: which words were taken, and as what. */
export interface HowStep {
  readonly stage: string;
  readonly words: string;
  readonly as: string;
}

const REMARKS: Readonly<Record<NonNullable<Judged['remark']>, string>> = {
  tally: 'It is the number that you publish for it, rounded so that all of them add up.',
  possibleNotLikely: 'Possible, not likely: the widest bounds would still allow it.',
  toConfirm:
    'To be confirmed: it could be read in two ways, or rests on a food nobody has confirmed.',
};

/** What rows of statements are made from. */
export interface RowsOf {
  readonly file: Pick<EpisodeFile, 'episode' | 'edit' | 'creator'>;
  /** Each text in which statements stand, by its id. */
  readonly texts: ReadonlyMap<string, string>;
  /** Words a minute at which the person speaks. */
  readonly perMinute: number;
}

/**
 * A judged statement in the words of the screen.
 * @example saidRow(judged, of).verdict // 'off by 38 calories'
 */
export function saidRow(judged: Judged, of: RowsOf): SaidRow {
  const { place, statement, verdict } = judged;
  const text = of.texts.get(place.textId) ?? '';
  const mend = of.file.edit?.mends.find(({ id }) => id === judged.mendId) ?? null;
  const span = spanOf(of.file.episode);
  const timed =
    place.startMs === null ? null : { startMs: place.startMs, endMs: place.endMs ?? place.startMs };
  const ways = waysToMend(judged, text, of.perMinute);
  const segment = of.file.episode.segments.find(({ id }) => id === place.segmentId);
  return {
    id: judged.id,
    textId: place.textId,
    kind: place.kind,
    start: statement.start,
    end: statement.end,
    startMs: place.startMs,
    place: placeWords(place),
    timecode: timed && span(timed),
    words: oneLine(statement.words),
    sentence: sentenceAround(text, statement.start, statement.end).words,
    standing: verdict,
    verdict: verdictWords(judged),
    heavier: /\b(less|fewer|under|below|shorter|cooler|sooner)\b/.test(judged.difference ?? '')
      ? 'breakdown'
      : 'said',
    why: judged.why,
    difference: judged.difference,
    sayInstead: judged.sayInstead,
    remark: judged.remark && REMARKS[judged.remark],
    caution: statement.kind === 'freeFrom' ? FREE_FROM_CAUTION : null,
    against: judged.against,
    misheard: judged.misheard,
    how: statement.how.map(({ stage, start, end, as }) => ({
      stage: STAGES[stage],
      words: oneLine(text.slice(start, end)),
      as: howWords({ stage, as }),
    })),
    mend: mend && { id: mend.id, kind: mend.mend.kind, words: mendWords(mend.mend, of.file) },
    segmentId: place.segmentId,
    dish: segment?.title ?? null,
    claim: claimOf(judged, segment?.claims ?? null),
    heard: timed && place.kind === 'captions' ? heardAround(timed.startMs, timed.endMs) : null,
    ways: {
      card: ways.card && { words: ways.card.words, ...span(ways.card) },
      cut: ways.cut && span(ways.cut),
      sentence: ways.sentence,
    },
  };
}

function claimOf({ claim }: Judged, said: DishClaims | null): SaidClaim | null {
  if (!claim) return null;
  return { ...claim, asks: claim.offers.length > 0 || claim.asMeal !== null, said };
}

/** A statement that the person put aside: nothing is held against it. */
export function asideRow(aside: PutAside, of: RowsOf): SaidRow {
  const unjudged = {
    difference: null,
    sayInstead: null,
    remark: null,
    against: null,
    misheard: [],
  };
  const judged: Judged = { ...aside, ...unjudged, verdict: 'unknown', why: '' };
  return { ...saidRow(judged, of), standing: 'aside', verdict: 'put aside' };
}

/** Where words stand, as it is read: '3:10', or 'description, line 4' where they have no time. */
export function placeWords(place: StatementPlace): string {
  if (place.startMs !== null) return printRuntime(Math.floor(place.startMs / 1000));
  const kind = KIND_WORDS[place.kind];
  return place.kind === 'captions' || place.kind === 'description'
    ? `${kind}, line ${place.line}`
    : kind;
}

/**
 * A verdict in the words of the screen, the difference in it where it can be said shortly.
 * @example verdictWords({ verdict: 'off', difference: '38 calories more than your breakdown', … }) // 'off by 38 calories'
 */
export function verdictWords({
  verdict,
  difference,
}: Pick<Judged, 'verdict' | 'difference'>): string {
  switch (verdict) {
    case 'agrees':
      return 'agrees with your breakdown';
    case 'edge':
      return 'at the edge';
    case 'unknown':
      return 'can’t say';
    case 'off': {
      const [, by] =
        /^(?:about )?(\S.{0,48}?) (?:more|less|fewer|over|under|above|below|longer|shorter|hotter|cooler|later|sooner)\b/.exec(
          difference ?? '',
        ) ?? [];
      return by === undefined ? 'off' : `off by ${by}`;
    }
  }
}

/** Times as frames are numbered at the episode's rate; at a rate that nobody numbers, as minutes and seconds. */
function spanOf(episode: EpisodeFile['episode']): (placed: Placed) => Span {
  const known = episodeRate(episode);
  const print = (ms: number) =>
    known ? printTimecode(framesIn(ms, known), known) : printRuntime(Math.floor(ms / 1000));
  return ({ startMs, endMs }) => ({ from: print(startMs), to: print(endMs) });
}

const SCOPE_WORDS: Readonly<Record<Extract<Mend, { kind: 'about' }>['scope'], string>> = {
  whole: 'all of it',
  portion: 'a portion',
  half: 'half of it',
  per100g: '100 g of it',
  day: 'the day',
  soFar: 'the day so far',
};

/** What the person said of a reading. `mendWords({ kind: 'heard', text: '52' }, file)` → 'You said it was “52”.' */
export function mendWords(mend: Mend, file: RowsOf['file']): string {
  if (mend.kind === 'nothing') return 'You said that this says nothing of the numbers.';
  if (mend.kind === 'heard') return `You said that it was “${mend.text}”.`;
  const dish = file.episode.segments.find(({ id }) => id === mend.segmentId);
  const portion = dish?.recipe?.portions.find(({ id }) => id === mend.portionId);
  const part = portion && portion.name !== '' ? portion.name : SCOPE_WORDS[mend.scope];
  return `You said that it is about ${dish ? `${dish.title}, ${part}` : part}.`;
}
