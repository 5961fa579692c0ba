import type { Token } from '#lib/episode/read-ingredient-tokens';
import type { ActionKind } from '#lib/method/method-step';
import type { PlaceAt } from '#lib/method/places';
import type { TimeAt } from '#lib/method/times';
import { isAdverb, LINK, verbAt, verbsOf } from '#lib/method/clause-verbs';
import { word } from '#lib/method/words-at';

/** A stretch of a sentence that asks for one thing. */
export interface Clause {
  readonly from: number;
  readonly next: number;
  /** Where its verb stands; null where it goes on with that of the one before. */
  readonly verbAt: number | null;
  readonly base: string;
  readonly kind: ActionKind;
}

/** Where the clause of a verb begins: after 'then' or ';', else with what links it. */
function beginning(tokens: readonly Token[], at: number, floor: number): number {
  for (let place = at - 1; place > floor; place -= 1) {
    if (/^(?:then|;|meanwhile)$/.test(word(tokens, place))) return place;
  }
  let place = at;
  while (place - 1 > floor && isAdverb(word(tokens, place - 1))) place -= 1;
  if (!LINK.test(word(tokens, place - 1))) return at;
  while (place - 1 > floor && LINK.test(word(tokens, place - 1))) place -= 1;
  return place;
}

interface Sentence {
  readonly tokens: readonly Token[];
  readonly places: readonly PlaceAt[];
  readonly times: readonly TimeAt[];
}

/** Clauses without a verb of their own: 'then at 170C for 40 minutes', 'and 10 minutes in the oven'. */
function verbless(sentence: Sentence, clause: Clause): Clause[] {
  const { tokens, times, places } = sentence;
  const own = times.filter(
    ({ from, use }) =>
      use !== 'none' && use !== 'total' && from >= clause.from && from < clause.next,
  );
  const [first, second] = own;
  if (!first || !second) return [clause];
  let cut = second.from;
  while (cut > first.next && !/^(?:then|plus|and|,|followed|;)$/.test(word(tokens, cut))) cut -= 1;
  if (cut <= first.next && !/^(?:then|plus|and|,|followed|;)$/.test(word(tokens, cut)))
    return [clause];
  const link = tokens.slice(cut, second.from).map(({ folded }) => folded);
  if (link.includes('or')) return [clause];
  const moved = places.some(
    ({ from, naming }) => naming !== 'off' && from >= cut && from < clause.next,
  );
  const more = link.some((text) => /^(?:then|plus|followed|another|further|and)$/.test(text));
  const also = /^(?:more|longer)$/.test(word(tokens, second.next));
  if (!moved && !more && !also) return [clause];
  const rest: Clause = { ...clause, from: cut, verbAt: null };
  return [{ ...clause, next: cut }, ...verbless(sentence, rest)];
}

/**
 * The clauses of a sentence by their verbs, in order. What only says until when, or how ('until golden',
 * 'stirring'), begins none. A sentence without a verb that is known is one clause of kind `put` where it names a
 * time, and none at all otherwise.
 */
export function clausesOf(
  tokens: readonly Token[],
  places: readonly PlaceAt[],
  times: readonly TimeAt[],
): Clause[] {
  const sentence = { tokens, places, times };
  const found = verbsOf(tokens, places, times);
  const timed = times.some(({ use }) => use !== 'none');
  if (found.length === 0) {
    if (!timed) return imperative(tokens);
    // 'From frozen' says what it was, not what is done to it.
    const known = tokens.findIndex(
      (_, at) => verbAt(tokens, at) !== null && word(tokens, at - 1) !== 'from',
    );
    const verb = known < 0 ? null : verbAt(tokens, known);
    const kind = verb && verb.kind !== 'prep' ? verb.kind : 'put';
    return verbless(sentence, {
      from: 0,
      next: tokens.length,
      verbAt: null,
      base: verb?.base ?? '',
      kind,
    });
  }
  const starts = found.map(({ at }, index) =>
    index === 0 ? 0 : beginning(tokens, at, found[index - 1]?.at ?? 0),
  );
  return found.flatMap(({ at, base, kind }, index) =>
    verbless(sentence, {
      from: starts[index] ?? 0,
      next: starts[index + 1] ?? tokens.length,
      verbAt: at,
      base,
      kind,
    }),
  );
}

/** A verb that is in no table, as the first word before what it is done to: 'Spatchcock the chicken.' */
function imperative(tokens: readonly Token[]): Clause[] {
  const first = tokens[0];
  const second = word(tokens, 1);
  if (first?.kind !== 'word' || first.folded.length < 3) return [];
  const asks = /^(?:the|your|it|them|everything|all|both|each|half)$/.test(second);
  const other =
    /^(?:the|this|that|these|those|it|they|your|you|there|for|and|but|if|when|with|in|on|at|of|like|makes|serves|keeps|tastes|looks|smells|not|all|both|half|using|enjoy|expect|after|before|once|unlike|because|since|while|into|over|under|from|to)$/;
  return asks && !other.test(first.folded)
    ? [{ from: 0, next: tokens.length, verbAt: 0, base: first.folded, kind: 'prep' }]
    : [];
}
