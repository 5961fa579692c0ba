import { ButtonForm } from '../../../_forms/button-form';
import type { Reading } from '#lib/figures/readings';
import { removeReading } from '../weigh-actions';
import { revOf, type EpisodeView } from './view';
import { exactGrams, momentOf, readingWords } from './weighed-words';

interface Props {
  readonly view: EpisodeView;
  readonly readings: readonly Reading[];
  /** What was weighed, for what reads aloud. */
  readonly what: string;
  /** Of the finished dish one reading counts alone; those of an ingredient add up. */
  readonly lastCounts?: boolean;
}

/** What was weighed and when, each reading with the way to take it back. */
export function Readings({ view, readings, what, lastCounts = false }: Props) {
  const { episode, kitchen } = view.file;
  if (readings.length === 0) return null;
  const older = lastCounts ? readings.length - 1 : 0;
  return (
    <ul className="mt-1" aria-label={`Weighed: ${what}`}>
      {readings.map((reading, index) => (
        <li
          key={reading.weighing.id}
          className="flex flex-wrap items-baseline justify-between gap-x-4 border-b border-line py-1"
        >
          <span>
            {exactGrams(reading.netMg)}
            <span className="text-soft">
              , {momentOf(reading, kitchen)}
              {index < older && ': no longer counts'}
            </span>
            <span className="block text-fine text-soft">{readingWords(reading, kitchen)}</span>
          </span>
          <ButtonForm
            action={removeReading}
            values={{
              episodeId: episode.id,
              weighingId: reading.weighing.id,
              rev: revOf(view, reading.weighing.id),
            }}
            label={`Take the reading back: ${exactGrams(reading.netMg)}, ${what}`}
          >
            Take the reading back
          </ButtonForm>
        </li>
      ))}
    </ul>
  );
}
