import Link from 'next/link';
import type { PromiseRow } from '#lib/overview/title-and-hook';
import { editHref } from '../../_components/view';

interface Props {
  readonly episodeId: string;
  readonly promises: readonly PromiseRow[];
}

/** What title and hook promise and the numbers do not bear out, each with its right words or what it needs. */
export function Promises({ episodeId, promises }: Props) {
  if (promises.length === 0) return null;
  return (
    <>
      <h3 className="mt-3">Title and hook</h3>
      <ul className="mt-1">
        {promises.map((row) => (
          <li key={row.key} className="hatch border-b border-line py-2">
            <b className="font-semibold">
              In the {row.in}, “{row.words}”
            </b>
            : {row.standing === 'unknown' ? '' : `${row.verdict}. `}
            {sentence(row.why)} {row.sayInstead !== null && <>Write “{row.sayInstead}” instead. </>}
            {row.remark !== null && <span className="text-soft">{row.remark} </span>}
            {row.in === 'hook' ? (
              <a className="link" href="#own-words">
                Change the hook
              </a>
            ) : (
              <Link className="link" href={editHref(episodeId, episodeId)}>
                Change the title
              </Link>
            )}
          </li>
        ))}
      </ul>
    </>
  );
}

function sentence(words: string): string {
  const text = words.charAt(0).toUpperCase() + words.slice(1);
  return /[.?!]$/.test(text) || text === '' ? text : `${text}.`;
}
