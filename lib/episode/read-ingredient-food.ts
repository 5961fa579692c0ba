import type { FoodState } from '#lib/foods/food';
import { singular } from '#lib/units/plain-words';
import { numberAt } from '#lib/episode/read-ingredient-number';
import type { Token } from '#lib/episode/read-ingredient-tokens';
import { unitAt } from '#lib/episode/read-ingredient-unit';
import {
  ADJECTIVES,
  ADVERBS,
  CARDINALS,
  CUT_INTO,
  DRY_WORDS,
  KEPT_BEFORE,
  LENGTHS,
  NOTE_STARTS,
  PREPARATION,
  SIZES,
  SOLD_DRY,
  STATES,
  WITH_PARTS,
} from '#lib/episode/read-ingredient-words';

/** The words after an amount, sorted: what names the food, what its state is, what remains. */
export interface FoodWords {
  readonly food: readonly Token[];
  readonly states: readonly FoodState[];
  /** A size word in front of the food: '2 ripe medium avocados'. */
  readonly size: string | null;
  /** Preparation inside the food's words, and the runs of words after it, each on its own. */
  readonly notes: readonly (readonly Token[])[];
  /** A number among the food's words that nothing explains. */
  readonly stray: Token | null;
  /** Where the next part begins; the end where none does. */
  readonly next: number;
}

const BREAK = /^[,;:–—]$/;
const KEPT_SIGN = /^[%/&]$/;
const TO_NOTE = /^(?:more|less|to|so|as|according)$/;
const AS_NOTE = /^(?:needed|required|desired|necessary|you|per)$/;
const NUMBERED = /^(?:type|no|number|size|grade|vitamin|omega|category)$/;
const SILENT_STATES = new Set(['cooked', 'raw', 'uncooked', 'drained', 'precooked', 'pre-cooked']);

/** Sorts the words from a place on, up to the end or to where another ingredient begins ('+ 2 whites'). */
export function foodWords(tokens: readonly Token[], from: number): FoodWords {
  const reader = new FoodReader(tokens);
  return reader.read(from);
}

class FoodReader {
  private readonly food: Token[] = [];
  private readonly states: FoodState[] = [];
  private readonly notes: Token[][] = [];
  private size: string | null = null;
  private stray: Token | null = null;
  private noun = false;
  /** Whether the last word was preparation, so that 'peeled and chopped' stays together. */
  private prepared = false;

  constructor(private readonly tokens: readonly Token[]) {}

  read(from: number): FoodWords {
    let at = from;
    while (at < this.tokens.length && !this.startsNote(at) && !startsPart(this.tokens, at, true)) {
      at = this.step(at);
    }
    const next = startsPart(this.tokens, at, true) ? at : this.remainder(at);
    const { food, states, size, notes, stray } = this;
    return { food, states, size, notes, stray, next };
  }

  /** Takes one word into the food or beside it; gives the place after it. */
  private step(at: number): number {
    const token = this.tokens[at];
    if (!token) return at + 1;
    if (token.kind === 'number') return this.number(token, at);
    if (token.kind === 'sign') {
      if (KEPT_SIGN.test(token.text) && this.food.length > 0) this.food.push(token);
      return at + 1;
    }
    return this.word(token, at);
  }

  private number(token: Token, at: number): number {
    const next = this.tokens[at + 1];
    const before = this.tokens[at - 1];
    const hyphen = next?.text === '-' && !next.spaced;
    const word = hyphen ? this.tokens[at + 2] : next;
    if (word && LENGTHS.has(word.folded) && word.folded !== 'in') {
      const end = at + (hyphen ? 3 : 2);
      this.notes.push(this.tokens.slice(at, end));
      return end;
    }
    const explained =
      next?.text === '%' ||
      (hyphen && word?.kind === 'word') ||
      /^\d{2}\/\d{1,2}$/.test(token.text) ||
      /^00?$/.test(token.text) ||
      before?.text === '/' ||
      NUMBERED.test(before?.folded ?? '');
    if (!explained) this.stray ??= token;
    this.food.push(token);
    if (!hyphen || !word) return at + 1;
    this.food.push(next, word);
    return at + 3;
  }

  private word(token: Token, at: number): number {
    const word = token.folded;
    const after = this.tokens[at + 1]?.folded ?? '';
    if (KEPT_BEFORE.get(word)?.has(after)) return this.keep(token, at, false);
    if (SIZES.has(word) && !this.noun && this.size === null) {
      this.size = SIZES.get(word) ?? null;
      return at + 1;
    }
    if (/^(?:and|or)$/.test(word) && this.prepared && isPrepared(this.tokens[at + 1])) {
      this.notes.at(-1)?.push(token);
      return at + 1;
    }
    if (ADVERBS.has(word) && (isPrepared(this.tokens[at + 1]) || after === 'ground')) {
      if (after !== 'ground') return this.aside(token, at);
      this.aside(token, at);
      return this.aside(this.tokens[at + 1] ?? token, at + 1);
    }
    const state = STATES.get(word);
    if (state) {
      this.states.push(state);
      return SILENT_STATES.has(word) ? at + 1 : this.aside(token, at);
    }
    if (word === 'roast' && !this.noun && this.isWord(at + 1)) {
      this.states.push('cooked');
      return this.aside(token, at);
    }
    if (DRY_WORDS.has(word) && this.isSoldDry(at)) {
      this.states.push('dry');
      return at + 1;
    }
    if (PREPARATION.has(word)) return this.aside(token, at);
    return this.keep(token, at, ADJECTIVES.has(word));
  }

  private keep(token: Token, at: number, adjective: boolean): number {
    this.food.push(token);
    if (!adjective) this.noun = true;
    this.prepared = false;
    return at + 1;
  }

  private aside(token: Token, at: number): number {
    const last = this.notes.at(-1);
    if (this.prepared && last) last.push(token);
    else this.notes.push([token]);
    this.prepared = true;
    return at + 1;
  }

  private isWord(at: number): boolean {
    return this.tokens[at]?.kind === 'word';
  }

  /** Whether 'dry' is said of something that is sold dry and cooked: 'dry red lentils', 'lentils, dry'. */
  private isSoldDry(at: number): boolean {
    for (let place = at + 1; place < this.tokens.length && place < at + 6; place += 1) {
      const token = this.tokens[place];
      if (token?.kind !== 'word') break;
      if (SOLD_DRY.has(singular(token.folded))) return true;
    }
    return this.food.some(({ folded }) => SOLD_DRY.has(singular(folded)));
  }

  /** Whether the note begins at a place: a comma after the food, 'for frying', 'to taste', 'cut into'. */
  private startsNote(at: number): boolean {
    const token = this.tokens[at];
    if (!token) return true;
    const after = this.tokens[at + 1];
    if (token.kind === 'sign') {
      const spacedDash = token.text === '-' && token.spaced;
      const stop = token.text === '.' && (after === undefined || after.spaced);
      return this.noun && (BREAK.test(token.text) || spacedDash || stop);
    }
    if (token.kind !== 'word') return false;
    const word = token.folded;
    if (this.food.length === 0) return word === 'for' && at > 0;
    if (NOTE_STARTS.has(word)) return true;
    if (word === 'or') return TO_NOTE.test(after?.folded ?? '');
    if (word === 'as') return AS_NOTE.test(after?.folded ?? '');
    if (word === 'in') return CUT_INTO.has(after?.folded ?? '');
    if (word === 'at') return after?.folded === 'room';
    if (word === 'with' || word === 'without') return WITH_PARTS.has(after?.folded ?? '');
    return (
      this.noun &&
      isPrepared(token) &&
      !KEPT_BEFORE.get(word)?.has(after?.folded ?? '') &&
      this.endsAfter(at)
    );
  }

  /** Whether preparation after the food's name goes on as a note: 'onion finely chopped', 'chicken cooked and shredded'. */
  private endsAfter(at: number): boolean {
    const after = this.tokens[at + 1];
    if (!after || after.kind === 'sign') return true;
    return isPrepared(after) || /^(?:and|or|in|into|with|to|for|on|at)$/.test(after.folded);
  }

  /** The runs of words after the food, between commas; gives where another part begins. */
  private remainder(from: number): number {
    let run: Token[] = [];
    let at = from;
    const close = () => {
      if (run.length > 0) this.notes.push(run);
      run = [];
    };
    for (; at < this.tokens.length; at += 1) {
      const token = this.tokens[at];
      if (!token) break;
      const afterComma = at === from || BREAK.test(this.tokens[at - 1]?.text ?? '');
      if (startsPart(this.tokens, at, afterComma)) break;
      if (/^[,;]$/.test(token.text) || (/^[-–—]$/.test(token.text) && token.spaced)) close();
      else if (/^[:.*]$/.test(token.text) && run.length === 0) continue;
      else run.push(token);
    }
    close();
    return at;
  }
}

/** Whether a word is of preparation, state, or how it is done. */
function isPrepared(token: Token | undefined): boolean {
  if (token?.kind !== 'word') return false;
  return PREPARATION.has(token.folded) || ADVERBS.has(token.folded) || STATES.has(token.folded);
}

const TIMES = /^(?:min|mins|minutes?|hours?|seconds?|secs?|days?|times?)$/;

/**
 * Whether another ingredient begins with a plus or an "and" before a number: '+ 2 whites', 'and 1 tsp oil'.
 * @param and whether "and" counts here; inside a note it does only after a comma
 */
function startsPart(tokens: readonly Token[], at: number, and: boolean): boolean {
  const sign = tokens[at];
  if (!sign || at === 0) return false;
  const plus = sign.text === '+' || sign.folded === 'plus';
  const joins = and && (sign.folded === 'and' || sign.text === '&');
  if (!plus && !joins) return false;
  const first = tokens[at + 1];
  if (!first) return false;
  const counts = first.kind === 'number' || CARDINALS.has(first.folded);
  if (!counts && !(plus && /^(?:a|an|half)$/.test(first.folded))) return false;
  const number = numberAt(tokens, at + 1);
  if (!number || !tokens[number.next]) return false;
  const after = tokens[number.next]?.folded ?? '';
  if (after === '%' || TIMES.test(after) || /^(?:little|few|bit|lot|extra)$/.test(after))
    return false;
  return unitAt(tokens, number.next)?.kind !== 'length';
}
