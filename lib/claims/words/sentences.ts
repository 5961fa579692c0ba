import type { Token } from './tokens';

/** For each token the number of its sentence and of its paragraph, and how each sentence ends. */
export interface Sentences {
  readonly of: readonly number[];
  /** Token at which each sentence begins; one more for the end. */
  readonly starts: readonly number[];
  readonly asked: readonly boolean[];
}

/**
 * Cuts tokens into sentences at full stops, question and exclamation marks and line ends.
 * @param shortened words with a full stop that ends nothing where a small letter or digits follow
 */
export function sentencesOf(tokens: readonly Token[], shortened: ReadonlySet<string>): Sentences {
  const of: number[] = [];
  const starts = [0];
  const asked: boolean[] = [];
  tokens.forEach((token, at) => {
    of.push(starts.length - 1);
    if (!ends(tokens, token, at, shortened)) return;
    asked.push(token.text === '?');
    starts.push(at + 1);
  });
  asked.push(false);
  starts.push(tokens.length);
  return { of, starts, asked };
}

function ends(
  tokens: readonly Token[],
  token: Token,
  at: number,
  shortened: ReadonlySet<string>,
): boolean {
  if (token.kind === 'line' || /^[!?;]$/.test(token.text)) return token.text !== ';';
  if (token.text !== '.') return false;
  const next = tokens[at + 1];
  if (next?.glued) return false;
  const short = shortened.has(tokens[at - 1]?.folded ?? '');
  return !(short && next && (next.kind === 'number' || /^\p{Ll}/u.test(next.text)));
}
