import type { Language } from '../language';
import { phraseAt } from './phrases';
import type { Token } from './tokens';

/** Words that a note of a sound has at most: '[upbeat music playing]'. */
const NOTE = 4;

/** Leaves out what captions hold beside the words: marks of who speaks, '>>', notes of sounds, '[Music]'. */
export function withoutNotes(tokens: readonly Token[]): Token[] {
  const kept: Token[] = [];
  let free = 0;
  tokens.forEach((token, at) => {
    if (at < free) return;
    const speaker = token.text === '>' && (isGlued(tokens[at + 1]) || token.glued);
    if (speaker || token.text === '♪' || token.text === '♫') return;
    if (token.text === '[') free = noteEnd(tokens, at);
    if (at >= free) kept.push(token);
  });
  return kept;
}

const isGlued = (token: Token | undefined) => token?.text === '>' && token.glued;

/** Token behind a note in brackets that holds no number. */
function noteEnd(tokens: readonly Token[], at: number): number {
  for (let next = at + 1; next <= at + NOTE + 1; next += 1) {
    const token = tokens[next];
    if (token?.text === ']') return next + 1;
    if (token === undefined || token.kind === 'number' || token.kind === 'line') return 0;
  }
  return 0;
}

/** Words in capitals alone in small letters, where each letter has one of the same length. */
export function withoutCapitals(text: string): string {
  if (/\p{Ll}/u.test(text) || !/\p{L}{3}/u.test(text)) return text;
  const small = text.toLowerCase();
  return small.length === text.length ? small : text;
}

/**
 * Leaves out the sounds that somebody makes while a word is looked for, so that 'four um hundred' is one number, with
 * one of the commas around them; not where they begin a phrase: 'uh no'.
 */
export function withoutHesitations(tokens: readonly Token[], language: Language): Token[] {
  const kept: Token[] = [];
  let skip = -1;
  tokens.forEach((token, at) => {
    if (at === skip) return;
    const sound = language.hesitations.has(token.folded);
    const phrase = sound ? phraseAt(language.lexicon, tokens, at) : null;
    if (!sound || (phrase !== null && phrase.next > at + 1)) kept.push(token);
    else if (tokens[at + 1]?.text === ',' && isPause(tokens[at - 1])) skip = at + 1;
  });
  return kept;
}

const isPause = (token: Token | undefined) => token === undefined || /^[,.]$/.test(token.text);
