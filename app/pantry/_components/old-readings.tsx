import Link from 'next/link';
import type { FoodVersion } from '#lib/foods/food';
import { SourceText } from './food-values';

interface Props {
  readonly foodId: string;
  /** All readings, the one in use first. */
  readonly versions: readonly FoodVersion[];
}

/** Earlier readings of a food, each with its source and date; what changed stands on a page of its own. */
export function OldReadings({ foodId, versions }: Props) {
  const old = versions.slice(1);
  if (old.length === 0) return null;
  return (
    <details className="mt-4">
      <summary className="link min-h-11 content-center">Earlier readings of its label</summary>
      <ul>
        {old.map((version) => (
          <li key={version.id} className="border-b border-line py-1">
            Reading {version.seq}: <SourceText version={version} />
          </li>
        ))}
      </ul>
      <Link
        className="link inline-flex min-h-11 items-center print:hidden"
        href={`/pantry/foods/${foodId}/readings`}
      >
        Beside each other: what changed
      </Link>
    </details>
  );
}
