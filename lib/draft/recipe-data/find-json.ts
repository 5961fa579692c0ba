/** A stretch of pasted text that should be JSON, and where it begins. */
export interface JsonStretch {
  readonly text: string;
  readonly at: number;
}

const OPEN = /<script\b[^>]*>/gi;
const TYPE = /\btype\s*=\s*(?:"([^"]*)"|'([^']*)'|([^\s>]+))/i;

/**
 * Where JSON-LD stands in what was pasted: all of it where it is JSON by itself, else the scripts of that type in a page
 * (HTML Living Standard, 4.12.1; JSON-LD 1.1, 7 "Embedding JSON-LD in HTML documents").
 * @example findJson('<script type="application/ld+json">{}</script>') // [{ text: '{}', at: 35 }]
 */
export function findJson(pasted: string): JsonStretch[] {
  const first = pasted.search(/[^\s\uFEFF]/);
  if (first < 0) return [];
  if (pasted[first] === '{' || pasted[first] === '[') {
    return [{ text: pasted.slice(first), at: first }];
  }
  const found: JsonStretch[] = [];
  OPEN.lastIndex = 0;
  for (let open = OPEN.exec(pasted); open; open = OPEN.exec(pasted)) {
    const at = open.index + open[0].length;
    const close = endOfScript(pasted, at);
    const [, double, single, bare] = TYPE.exec(open[0]) ?? [];
    const type = (double ?? single ?? bare ?? '').toLowerCase().split(';')[0]?.trim();
    if (type === 'application/ld+json') found.push({ text: pasted.slice(at, close), at });
    OPEN.lastIndex = close;
  }
  return found;
}

const CLOSE = /<\/script\b/gi;

function endOfScript(pasted: string, from: number): number {
  CLOSE.lastIndex = from;
  return CLOSE.exec(pasted)?.index ?? pasted.length;
}

/** Line and column of a place, both counted from 1. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

/** Tells places of a text by line and column; the text is looked through once. */
export function placesOf(text: string): (at: number) => Place {
  const starts = [0, ...[...text.matchAll(/\r\n|\n|\r/g)].map((end) => end.index + end[0].length)];
  return (at) => {
    let [low, high] = [0, starts.length];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if ((starts[middle] ?? 0) <= at) low = middle;
      else high = middle;
    }
    return { line: low + 1, column: at - (starts[low] ?? 0) + 1 };
  };
}
