import { ENGLISH } from '#lib/claims/english/english';
import type { Statement } from '#lib/claims/statement';

/** UTF-16 units from one time to the next of the same cooking. */
const NEAR = 70;

/** What times that follow one another come to, in minutes. */
export interface InAll {
  readonly low: number;
  readonly high: number;
}

interface Row {
  readonly statement: Statement;
}

/**
 * Rows with what their minutes come to where one time goes on from another: 'twenty minutes, then the fish for another
 * twelve' is 32 in all. Rows in the order of their text.
 * @example withRuns(rows, text)[0]?.inAll // { low: 32, high: 32 }
 */
export function withRuns<T extends Row>(
  rows: readonly T[],
  text: string,
): (T & { readonly inAll?: InAll })[] {
  const made: (T & { readonly inAll?: InAll })[] = [];
  let run: T[] = [];
  const close = () => {
    const sum = (of: 'low' | 'high') =>
      run.reduce((total, { statement }) => total + ('low' in statement ? statement[of] : 0), 0);
    const inAll = { low: sum('low'), high: sum('high') };
    made.push(...run.map((row) => (run.length > 1 ? { ...row, inAll } : row)));
    run = [];
  };
  for (const row of rows) {
    const last = run.at(-1)?.statement;
    if (last && !goesOn(last, row.statement, text)) close();
    run.push(row);
  }
  close();
  return made;
}

function goesOn(last: Statement, next: Statement, text: string): boolean {
  if (last.kind !== 'minutes' || next.kind !== 'minutes') return false;
  if (next.start < last.end || next.start - last.end > NEAR) return false;
  const between = text.slice(last.end, next.start);
  return !/[.!?]\s|\n\s*\n/.test(between) && ENGLISH.judging.then.test(between);
}
