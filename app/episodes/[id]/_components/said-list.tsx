import Link from 'next/link';
import { isBroken, type SaidStanding } from '#lib/overview/said-standing';

interface Props {
  readonly episodeId: string;
  readonly said: readonly SaidStanding[];
  /** Says of each what it is about, where the heading does not. */
  readonly named?: boolean;
}

/** Lines said in front of the camera: when, word for word, and what has changed under them. */
export function SaidList({ episodeId, said, named = false }: Props) {
  return (
    <ul className="mt-2 grid gap-3">
      {said.map((line) => (
        <li
          key={line.id}
          className={`border-l-[6px] pl-3 ${isBroken(line) ? 'border-hand' : 'border-ink'}`}
        >
          {named && <b className="block font-semibold">{line.about}</b>}
          <span className="block">“{line.text}”</span>
          <span className="block text-fine text-soft">
            said on {line.on}
            {line.change === null && !line.clashes && '; nothing has changed under it'}
          </span>
          {line.change && (
            <span className={`block ${isBroken(line) ? 'font-semibold text-hand' : ''}`}>
              {isBroken(line) && 'Broken: '}
              {line.change.words}
            </span>
          )}
          {line.clashes && (
            <span className="block font-semibold text-hand">
              It does not add up with the other numbers that were said.
            </span>
          )}
          {isBroken(line) && (
            <Link
              className="link inline-flex min-h-11 items-center print:hidden"
              href={`/episodes/${episodeId}/day/live#say`}
            >
              Say it again, or say that it was not said after all
            </Link>
          )}
        </li>
      ))}
    </ul>
  );
}
