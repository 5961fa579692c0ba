import type { HistoryCount } from '#lib/store/read-locks';

/** Why locks that came with a zip hold nothing here; nothing where there are none. */
export function HistoryLocks({ of }: { readonly of: HistoryCount }) {
  const words = [otherRowsWords(of.otherRows), unlikeWords(of.unlike)].filter(Boolean);
  if (words.length === 0) return null;
  return <span className="block max-w-[70ch]">{words.join(' ')}</span>;
}

function otherRowsWords(count: number): string {
  if (count === 0) return '';
  const locks = count === 1 ? 'The lock' : `The ${String(count)} locks`;
  return `This episode is here a second time, so its rows have names of their own. ${locks} of the zip that it came in, with copied texts and corrections, are kept as they were taken and hold nothing here.`;
}

function unlikeWords(count: number): string {
  if (count === 0) return '';
  const locks = count === 1 ? 'A lock' : `${String(count)} locks`;
  const are = count === 1 ? 'is' : 'are';
  return `${locks} of the zip that this episode came in ${are} kept as history only: its numbers do not come out of its own ingredients, or another version of the program worked them out.`;
}
