import type { Token } from './tokens';

/** For each token the number of its sentence and of its paragraph, and how each sentence ends. */
export interface Sentences {
  readonly of: readonly number[];
  /** Token at which each sentence begins; one more for the end. */
  readonly starts: readonly number[];
  readonly asked: readonly boolean[];
}

/** Words with a full stop that is no end, where a small letter or digits follow. */
const SHORT =
  /^(approx|ca|min|mins|max|tbsp|tsp|oz|lb|lbs|vs|incl|est|no|fl|hr|hrs|sec|in|ep|vol)$/;

/** Cuts tokens into sentences at full stops, question and exclamation marks and line ends. */
export function sentencesOf(tokens: readonly Token[]): Sentences {
  const of: number[] = [];
  const starts = [0];
  const asked: boolean[] = [];
  tokens.forEach((token, at) => {
    of.push(starts.length - 1);
    if (!ends(tokens, token, at)) return;
    asked.push(token.text === '?');
    starts.push(at + 1);
  });
  asked.push(false);
  starts.push(tokens.length);
  return { of, starts, asked };
}

function ends(tokens: readonly Token[], token: Token, at: number): boolean {
  if (token.kind === 'line' || /^[!?;]$/.test(token.text)) return token.text !== ';';
  if (token.text !== '.') return false;
  const next = tokens[at + 1];
  if (next?.glued) return false;
  const short = SHORT.test(tokens[at - 1]?.folded ?? '');
  return !(short && next && (next.kind === 'number' || /^\p{Ll}/u.test(next.text)));
}
