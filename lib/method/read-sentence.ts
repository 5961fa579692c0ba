import { tokenize, type Token } from '#lib/episode/read-ingredient-tokens';
import { clausesOf, type Clause } from '#lib/method/clauses';
import { figuresOf, type FiguresAt } from '#lib/method/degrees';
import { handsOf } from '#lib/method/hands';
import { halfwayOf } from '#lib/method/halfway';
import { figureUse } from '#lib/method/heat-figures';
import { isRemark } from '#lib/method/remark';
import type { Place, ReadStep, SaidMinutes, Setting, Stretch } from '#lib/method/method-step';
import { placesOf, type PlaceAt } from '#lib/method/places';
import { placeOf, type Standing } from '#lib/method/place-of';
import { timesOf, type TimeAt } from '#lib/method/times';

/** An action of a sentence before it is known whether it is a step of its own. */
interface Act {
  readonly clause: Clause;
  readonly place: Place;
  readonly time: TimeAt | null;
  readonly figures: readonly FiguresAt[];
  readonly settings: readonly Setting[];
  readonly inside: FiguresAt | null;
  readonly step: Omit<ReadStep, 'inside' | 'insideFrom'>;
}

const HEATING: readonly Place[] = ['oven', 'air fryer', 'grill', 'microwave', 'burner'];

/**
 * The steps that a sentence asks for, in its order: one for each timed action; an untimed one beside it only on
 * other equipment; without any time one for each piece of equipment, or a single one. A remark gives none.
 * `readSentence('Bake at 180C for 20–25 mins.')` → one step: oven, 180 °C, 20 to 25 minutes, by itself.
 * @param offset where the sentence begins in the text, added to every place
 */
export function readSentence(sentence: string, offset = 0): ReadStep[] {
  const tokens = tokenize(sentence);
  const times = timesOf(tokens);
  if (isRemark(tokens, times)) return [];
  const places = placesOf(tokens);
  const clauses = clausesOf(tokens, places, times);
  const acts = actsOf({ tokens, times, places, clauses, offset });
  return giveInside(acts, chosen(acts, places)).map((act) => {
    const of = act.inside;
    return {
      ...act.step,
      inside: of?.settings[0] ?? null,
      insideFrom: of ? stretch(tokens, of, offset) : null,
    };
  });
}

interface Sentence {
  readonly tokens: readonly Token[];
  readonly times: readonly TimeAt[];
  readonly places: readonly PlaceAt[];
  readonly clauses: readonly Clause[];
  readonly offset: number;
}

function within<T extends { readonly from: number }>(all: readonly T[], clause: Clause): T[] {
  return all.filter(({ from }) => from >= clause.from && from < clause.next);
}

function actsOf(sentence: Sentence): Act[] {
  const { tokens, clauses, offset } = sentence;
  const figures = figuresOf(tokens);
  const standing: Standing = {
    place: null,
    given: false,
    off: false,
    covered: false,
    machine: false,
  };
  const settingsAt = new Map<Place, readonly Setting[]>();
  return clauses.map((clause): Act => {
    const own = within(figures, clause);
    const uses = own.map((each) => ({ each, use: figureUse(tokens, each, clause) }));
    const settings = uses.flatMap(({ each, use }) => (use === 'setting' ? each.settings : []));
    const time = timeOf(tokens, clause, within(sentence.times, clause));
    const named = within(sentence.places, clause).filter(
      ({ from }) => !isAside(tokens, clause, from),
    );
    const { place, preheats } = placeOf({
      tokens,
      clause,
      named,
      standing,
      settings,
      timed: time !== null,
    });
    const target = targetOf(place, standing);
    if (settings.length > 0) settingsAt.set(target, settings);
    const degrees = place === 'none' ? [] : (settingsAt.get(place) ?? []);
    const from = uses.find(({ use }) => use === 'setting')?.each;
    return {
      clause,
      place,
      time,
      figures: own,
      settings,
      inside: uses.find(({ use }) => use === 'inside')?.each ?? null,
      step: {
        minutes: time ? minutesOf(time) : null,
        degrees,
        equipment: place,
        hands: handsOf({ tokens, clause, place, standing, preheats, time, settings }),
        verb: clause.base,
        kind: clause.kind,
        preheats,
        halfway: halfwayOf(tokens, clause),
        meanwhile:
          clause.from === 0 && /^(?:meanwhile|while|whilst)$/.test(tokens[0]?.folded ?? ''),
        words: stretch(tokens, wordsOf(tokens, clause), offset),
        minutesFrom: time ? stretch(tokens, time, offset) : null,
        degreesFrom: from ? stretch(tokens, from, offset) : null,
      },
    };
  });
}

/** What a setting is of, where the action itself is nowhere: what was in use, else the oven. */
function targetOf(place: Place, standing: Standing): Place {
  if (place !== 'none' && place !== 'fridge' && place !== 'freezer') return place;
  return standing.place !== null && HEATING.includes(standing.place) ? standing.place : 'oven';
}

/** Whether a place is named beside the action only: 'keeping the first ones warm in a low oven'. */
function isAside(tokens: readonly Token[], clause: Clause, at: number): boolean {
  for (let place = at; place > clause.from; place -= 1) {
    if (tokens[place]?.folded === ',' && place + 1 < at) {
      return /^(?:keeping|leaving|saving|setting)$/.test(tokens[place + 1]?.folded ?? '');
    }
  }
  return false;
}

/** Whether a time only says how long before something it is done: 'take the butter out 30 minutes before baking'. */
function isAhead(tokens: readonly Token[], clause: Clause, time: TimeAt): boolean {
  if (!/^(?:before|ahead)$/.test(tokens[time.next]?.folded ?? '')) return false;
  const asked = tokens.slice(clause.from, time.from).some(({ folded }) => folded === 'for');
  return !asked && /^(?:prep|put)$/.test(clause.kind);
}

/** The time of a clause: the whole where it is said, else the first. */
function timeOf(tokens: readonly Token[], clause: Clause, times: readonly TimeAt[]): TimeAt | null {
  const kept = times.filter((time) => time.use !== 'none' && !isAhead(tokens, clause, time));
  return kept.find(({ use }) => use === 'total') ?? kept[0] ?? null;
}

function minutesOf({ low, high, use }: TimeAt): SaidMinutes {
  const times = use === 'side' ? 2 : 1;
  return { low: low === null ? null : low * times, high: high === null ? null : high * times };
}

/** Which actions are steps of their own. */
function chosen(acts: readonly Act[], places: readonly PlaceAt[]): Act[] {
  const timed = acts.filter(({ time }) => time !== null);
  const taken = new Set<Place>(timed.map(({ place }) => place));
  if (timed.length === 0) {
    const used = [...new Set(acts.map(({ place }) => place))].filter((place) => place !== 'none');
    if (used.length === 0) return asOne(acts);
    return used.flatMap((place) => merged(acts, place) ?? []);
  }
  const shown = new Set<Act>(timed);
  for (const act of acts) {
    if (act.place === 'none' || taken.has(act.place) || isTin(act, acts, places)) continue;
    taken.add(act.place);
    const best = merged(acts, act.place);
    if (best) shown.add(best);
  }
  return [...shown].sort((a, b) => a.clause.from - b.clause.from);
}

/** All that is prepared without a time, as one action: its words are those of the whole sentence. */
function asOne(acts: readonly Act[]): Act[] {
  const [first, last] = [acts[0], acts.at(-1)];
  if (!first || !last) return [];
  const words = { start: first.step.words.start, end: last.step.words.end };
  const prepared =
    last.step.hands === 'by hand' && acts.some(({ clause }) => clause.kind === 'prep');
  const kind = prepared ? 'prep' : last.step.kind;
  return [{ ...last, step: { ...last.step, words, kind } }];
}

/** A 'pan' that something is put into before it is baked is a tin. */
function isTin(act: Act, acts: readonly Act[], places: readonly PlaceAt[]): boolean {
  if (act.place !== 'burner' || !/^(?:prep|put|set)$/.test(act.clause.kind)) return false;
  const heated = within(places, act.clause).some(({ byHeat }) => byHeat);
  return !heated && acts.some(({ place }) => place === 'oven');
}

/** All that is done in one place without a time, as one action: that of its first heating, with every setting. */
function merged(acts: readonly Act[], place: Place): Act | null {
  const here = acts.filter((act) => act.place === place);
  const heats = here.filter(({ clause }) => !/^(?:prep|put|set|check)$/.test(clause.kind));
  const first = heats[0] ?? here[0];
  if (!first) return null;
  const byHand = heats.some(({ step }) => step.hands === 'by hand');
  const degrees = here.flatMap(({ settings }) => settings);
  const from = here.find(({ step }) => step.degreesFrom !== null)?.step.degreesFrom ?? null;
  const inside = here.find((act) => act.inside !== null)?.inside ?? null;
  const hands = byHand ? 'by hand' : first.step.hands;
  const all = degrees.length > 0 ? degrees : first.step.degrees;
  return { ...first, inside, step: { ...first.step, hands, degrees: all, degreesFrom: from } };
}

/** The inside temperature goes to the step that heats to it; without one, checking is a step by itself. */
function giveInside(acts: readonly Act[], steps: Act[]): Act[] {
  const said = acts.find(({ inside }) => inside !== null);
  const bare = steps.map((step) => ({ ...step, inside: null }));
  if (!said) return bare;
  const heats = bare.filter(({ place }) => HEATING.includes(place));
  const target =
    heats.find(({ clause }) => clause === said.clause) ??
    heats.at(-1) ??
    bare.find(({ clause, time }) => clause === said.clause && time === null);
  if (target) {
    return bare.map((step) => (step === target ? { ...step, inside: said.inside } : step));
  }
  const plain = { equipment: 'none', hands: 'by hand', kind: 'check', degrees: [] } as const;
  const untimed = { minutes: null, minutesFrom: null, degreesFrom: null, halfway: null };
  const check: Act = {
    ...said,
    place: 'none',
    time: null,
    step: { ...said.step, ...plain, ...untimed },
  };
  return [...bare, check].sort((a, b) => a.clause.from - b.clause.from);
}

/** A clause without what links it to the one before. */
function wordsOf(tokens: readonly Token[], clause: Clause): { from: number; next: number } {
  let { from, next } = clause;
  while (from < next && /^(?:and|then|,|;|meanwhile|\)|&|:|–|—)$/.test(tokens[from]?.folded ?? ''))
    from += 1;
  while (next > from && /^(?:and|then|,|;|\.|!|:|–|—)$/.test(tokens[next - 1]?.folded ?? ''))
    next -= 1;
  return { from, next };
}

function stretch(
  tokens: readonly Token[],
  { from, next }: { readonly from: number; readonly next: number },
  offset: number,
): Stretch {
  const start = tokens[from]?.start ?? 0;
  return { start: offset + start, end: offset + (tokens[next - 1]?.end ?? start) };
}
