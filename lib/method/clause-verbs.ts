import type { Token } from '#lib/episode/read-ingredient-tokens';
import type { ActionKind } from '#lib/method/method-step';
import type { PlaceAt } from '#lib/method/places';
import type { TimeAt } from '#lib/method/times';
import {
  ADVERBS,
  CAUSES,
  DOUBTFUL,
  GOES_ON,
  VERB_FORMS,
  type VerbForm,
} from '#lib/method/verb-words';
import { word } from '#lib/method/words-at';

/** A verb that asks for something, with what it means where it stands. */
export interface AskingVerb {
  readonly at: number;
  readonly base: string;
  readonly kind: ActionKind;
}

const SCOPE =
  /^(?:until|till|when|once|if|unless|while|whilst|before|without|because|where|which|that|who|as|than|so|like)$/;
const BE = /^(?:is|are|was|were|be|been|being|get|gets)$/;
const MODAL = /^(?:should|must|you|we|please|to|will)$/;
/** What links one thing to be done to the next. */
export const LINK = /^(?:and|or|but|&|,|;|:|\(|–|—|\+)$/;
/** What follows a verb and not a noun: the thing it is done to, or how, where and how long. */
const AFTER_VERB =
  /^(?:the|it|them|a|an|your|this|these|those|both|all|each|any|half|everything|in|into|on|onto|for|until|till|at|over|under|with|about|around|another|again|off|up|down|to|as|every|from|through|by|well|and|or|aside|out|back|once|together|uncovered|covered|between|,|\.|;|\)|overnight|one|two|three|four|five|six|eight|ten|fifteen|twenty|thirty|without|inside|briefly|their|its|then|per|very|just|only|until)$/;

/** Things that a list names as often as a method asks for them to be used. */
const THING =
  /^(?:salt|oil|butter|flour|cream|juice|zest|stock|sauce|ice|plate|pit|fork|stone|seed|core|mash|mix|quarter|brown|roast|season|top|shape|coat|dust|stack|layer|press|pickle|stew|braise|fry|ground)$/;

function looksLikeVerb(tokens: readonly Token[], at: number): boolean {
  const next = tokens[at + 1];
  if (next?.folded === 'it' && /^(?:is|will|should)$/.test(word(tokens, at + 2))) return false;
  if (
    THING.test(word(tokens, at)) &&
    /^(?:and|or|,|\.|;|\)|for|in|with|)$/.test(next?.folded ?? '')
  ) {
    // 'brown in the pan' is asked, 'salt and pepper' is not.
    if (
      !/^(?:in|for)$/.test(next?.folded ?? '') ||
      !/^(?:brown|roast|fry|braise|stew|press)$/.test(word(tokens, at))
    )
      return false;
  }
  return !next || next.kind === 'number' || AFTER_VERB.test(next.folded) || /ly$/.test(next.folded);
}

/** The verb that begins at a token, of one word or two ('stir fry'). */
export function verbAt(tokens: readonly Token[], at: number) {
  const one = word(tokens, at);
  const two = VERB_FORMS.get(`${one}-${word(tokens, at + 1)}`);
  if (two) return { ...two, length: 2 };
  const found = VERB_FORMS.get(one);
  return found ? { ...found, length: 1 } : null;
}

/** Whether a word stands beside a verb without changing where it belongs. */
export const isAdverb = (text: string): boolean => ADVERBS.has(text) || /ly$/.test(text);

/** The place before a verb, past adverbs; `then` where 'then' stood among them. */
function before(tokens: readonly Token[], at: number): { at: number; then: boolean } {
  let place = at - 1;
  let then = false;
  while (place >= 0 && isAdverb(word(tokens, place))) {
    then ||= word(tokens, place) === 'then';
    place -= 1;
  }
  return { at: place, then };
}

interface Scan {
  readonly tokens: readonly Token[];
  readonly places: readonly PlaceAt[];
  readonly times: readonly TimeAt[];
  readonly found: AskingVerb[];
  inScope: boolean;
  passive: boolean;
  /** Where a verb stands that sets the next one going ('leave … to cool'); null where none does. */
  cause: number | null;
}

type How = 'new' | 'instead' | null;

/** Whether a verb form at a token is an action of its own, or what the verb before it means. */
function howOf(
  scan: Scan,
  at: number,
  base: string,
  kind: ActionKind,
  forms: readonly VerbForm[],
): How {
  const { tokens } = scan;
  const prior = before(tokens, at);
  const p = word(tokens, prior.at);
  const dash = p === '-' && tokens[prior.at]?.spaced === true;
  const begins = prior.at < 0 || prior.then || LINK.test(p) || dash || p === '.' || p === ')';
  const first = prior.at < 0 || prior.then;
  if (
    /^(?:time|times|powder|soda|sheet|tin|tray|paper|parchment|dish|sugar|rice|bread|lentils|oil)$/.test(
      word(tokens, at + 1),
    ) &&
    (forms.includes('ing') || base === 'brown' || base === 'cook')
  ) {
    return null;
  }
  if (/^(?:not|never|don't)$/.test(p)) return null;
  if (forms.includes('base')) {
    if (scan.cause !== null && at - scan.cause <= 12 && at > scan.cause) {
      const free = p === 'to' || !/^(?:the|a|an|of|in|on|with)$/.test(p);
      if (free && !(scan.inScope && p !== 'to') && !begins) return 'instead';
    }
    if (scan.inScope) {
      const plainly =
        tokens[at + 1]?.kind === 'number' ||
        /^(?:the|it|them|for|in|on|your)$/.test(word(tokens, at + 1));
      if (
        !/^(?:and|or)$/.test(p) ||
        (DOUBTFUL.has(base) && !plainly) ||
        !looksLikeVerb(tokens, at)
      ) {
        if (!(p === ',' && looksLikeVerb(tokens, at))) return null;
      }
      return 'new';
    }
    if (first) return /^(?:rest)$/.test(base) && word(tokens, at + 1) === 'of' ? null : 'new';
    if (begins) return !DOUBTFUL.has(base) || looksLikeVerb(tokens, at) ? 'new' : null;
    if (MODAL.test(p) && p !== 'to') return 'new';
    if (/^(?:time|ready|need|needs|want|going)$/.test(word(tokens, prior.at - 1)) && p === 'to')
      return 'new';
    const afterPlace = scan.places.some(({ next }) => next === prior.at + 1);
    const led =
      scan.found.length === 0 && /^(?:in|over|on|using|with|for|under|at)$/.test(word(tokens, 0));
    if ((afterPlace || led) && looksLikeVerb(tokens, at) && kind !== 'prep') return 'new';
    if (led && !DOUBTFUL.has(base) && looksLikeVerb(tokens, at)) return 'new';
  }
  if (scan.inScope) return null;
  if (forms.includes('ed') && scan.passive && (BE.test(p) || LINK.test(p) || prior.then || first))
    return 'new';
  if (forms.includes('ing')) {
    const goes = VERB_FORMS.get(p)?.base ?? p;
    if (GOES_ON.has(goes)) return 'instead';
    if (prior.at < 0 && /^(?:takes|needs|for)$/.test(word(tokens, at + 1))) return 'new';
  }
  if (forms.includes('s') && scan.times.length > 0 && !/^(?:prep|check|set|fry)$/.test(kind)) {
    const subject = prior.at >= 0 && !/^(?:the|a|an|of|with|in|on|for|to|[0-9].*)$/.test(p);
    if (subject && scan.found.length === 0) return 'new';
    if (p === 'and' && scan.found.length > 0 && scan.found.at(-1)?.kind !== 'prep') return 'new';
  }
  return null;
}

/** What a verb means with what follows it. */
function meaning(tokens: readonly Token[], at: number, base: string, kind: ActionKind): ActionKind {
  const after = tokens
    .slice(at + 1, at + 9)
    .map(({ folded }) => folded)
    .join(' ');
  const setting =
    /^(?:off |down |up )?(?:the |your )?(?:heat|oven|temperature|grill|hob|flame|air fryer|burner|gas)\b/;
  if (/^(?:turn|reduce|lower|raise|increase|set|drop|switch)$/.test(base)) {
    if (setting.test(after) || /^(?:it )?(?:down|up) (?:to )?(?:the |\d)/.test(after)) return 'set';
  }
  if (base === 'lower' || base === 'raise') return base === 'lower' ? 'put' : 'set';
  if (base === 'set' && /^(?:\w+ ){0,4}(?:over|on) (?:a |the )/.test(after)) return 'put';
  if (base === 'cover' && /^(?:\w+ )?(?:overnight|for \d)/.test(after)) return 'wait';
  const boils =
    /^(?:[\w-]+ ){0,6}(?:to|up to|to near|just to) (?:a|the) (?:[\w-]+ )?(?:boil|simmer|bubble)\b/;
  if (/^(?:bring|return|come|heat|get)$/.test(base) && boils.test(after)) return 'boil';
  if (base === 'bring') return 'heat';
  if (/^(?:keep|hold)$/.test(base) && /^(?:it |them |the \w+ )?(?:warm|hot)\b/.test(after))
    return 'wait';
  if (/^(?:put|place)$/.test(base) && /^(?:\w+ )?aside\b/.test(after)) return 'wait';
  return kind;
}

/**
 * The verbs of a sentence that ask for something, in order. What only says until when, or how ('until golden',
 * 'stirring'), asks for nothing; of 'leave … to cool' the second verb counts, where the first one stands.
 */
export function verbsOf(
  tokens: readonly Token[],
  places: readonly PlaceAt[],
  times: readonly TimeAt[],
): readonly AskingVerb[] {
  const found: AskingVerb[] = [];
  const scan: Scan = { tokens, places, times, found, inScope: false, passive: false, cause: null };
  for (let at = 0; at < tokens.length; at += 1) {
    const text = word(tokens, at);
    if (/^(?:,|;|\)|:|\.)$/.test(text)) {
      scan.inScope = false;
      scan.cause = text === ',' ? scan.cause : null;
    }
    if (text === 'then') scan.inScope = false;
    if (
      BE.test(text) &&
      !scan.inScope &&
      !/^(?:can|could|may|might|would)$/.test(word(tokens, at - 1))
    ) {
      scan.passive = true;
    }
    const verb = verbAt(tokens, at);
    const how = verb && howOf(scan, at, verb.base, verb.kind, verb.forms);
    if (verb && how) {
      const kind = meaning(tokens, at, verb.base, verb.kind);
      const last = found.at(-1);
      // 'leave … to soften' is waiting.
      if (how === 'instead' && last && verb.base === 'soften')
        found[found.length - 1] = { ...last, kind: 'wait' };
      else if (how === 'instead' && last)
        found[found.length - 1] = { ...last, base: verb.base, kind };
      else found.push({ at, base: verb.base, kind });
      scan.inScope = false;
      scan.cause = CAUSES.has(verb.base) ? at : null;
      at += verb.length - 1;
    } else if (SCOPE.test(text) && !(text === 'as' && word(tokens, at + 1) === 'before')) {
      scan.inScope = true;
    }
  }
  return found;
}
