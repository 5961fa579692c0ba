import type { Row, TranscriptText } from './view';

/** A row of the transcript: the head of a text, or one of its lines with the statements that stand in it. */
export type Line =
  | { readonly kind: 'head'; readonly text: TranscriptText }
  | {
      readonly kind: 'line';
      readonly text: TranscriptText;
      readonly start: number;
      readonly end: number;
      readonly startMs: number | null;
      readonly rows: readonly Row[];
    };

/** Every line of the texts, in order, and in which of them each statement begins. */
export interface Transcript {
  readonly lines: readonly Line[];
  readonly lineOf: ReadonlyMap<string, number>;
}

/** Lays statements over the lines in which they stand. A statement may go over several. */
export function transcriptOf(texts: readonly TranscriptText[], rows: readonly Row[]): Transcript {
  const lines: Line[] = [];
  const lineOf = new Map<string, number>();
  const byText = new Map<string, Row[]>();
  for (const row of rows) {
    const own = byText.get(row.textId);
    if (own) own.push(row);
    else byText.set(row.textId, [row]);
  }
  for (const text of texts) {
    const own = [...(byText.get(text.id) ?? [])].sort((a, b) => a.start - b.start);
    lines.push({ kind: 'head', text });
    let first = 0;
    text.starts.forEach((start, at) => {
      const end = text.starts[at + 1] ?? text.text.length;
      while (first < own.length && (own[first]?.end ?? 0) <= start) first += 1;
      const here: Row[] = [];
      for (let next = first; next < own.length; next += 1) {
        const row = own[next];
        if (row === undefined || row.start >= end) break;
        if (row.end <= start) continue;
        here.push(row);
        if (!lineOf.has(row.id)) lineOf.set(row.id, lines.length);
      }
      lines.push({ kind: 'line', text, start, end, startMs: text.times[at] ?? null, rows: here });
    });
  }
  return { lines, lineOf };
}

/** A piece of a line: plain words, or those of a statement. */
export interface Piece {
  readonly start: number;
  readonly words: string;
  readonly row: Row | null;
}

/** A line cut where statements begin and end; where two overlap, the first has the words. */
export function piecesOf({ text, start, end, rows }: Extract<Line, { kind: 'line' }>): Piece[] {
  const pieces: Piece[] = [];
  let at = start;
  const add = (to: number, row: Row | null) => {
    if (to <= at) return;
    pieces.push({ start: at, words: text.text.slice(at, to), row });
    at = to;
  };
  for (const row of rows) {
    const stop = row.end < end ? row.end : end;
    if (stop <= at) continue;
    add(row.start, null);
    add(stop, row);
  }
  add(end, null);
  return pieces;
}
