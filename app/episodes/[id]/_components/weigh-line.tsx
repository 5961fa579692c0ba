import Link from 'next/link';
import type { Recipe, RecipeLine } from '#lib/episode/schema';
import { lineReadings } from '#lib/figures/readings';
import { weighLine } from '../weigh-actions';
import { OpenedHere } from './opened-here';
import { Readings } from './readings';
import { rowHref, type EpisodeView } from './view';
import { addsToWords, scaleChoices } from './weighed-words';
import { WeighForm } from './weigh-form';

interface Props {
  readonly view: EpisodeView;
  readonly recipe: Recipe;
  readonly line: RecipeLine;
}

/** An ingredient on the scale: what was weighed of it, and one more reading. */
export function WeighLine({ view, recipe, line }: Props) {
  const { episode, kitchen } = view.file;
  const { readings } = lineReadings(recipe, line.id);
  return (
    <OpenedHere rowId={`row-${line.id}`} closeHref={rowHref(episode.id, line.id)}>
      <section aria-label={`Weigh: ${line.text}`} className="grid gap-3 pt-2">
        <Readings view={view} readings={readings} what={line.text} />
        <p className="max-w-[62ch] text-soft">{addsToWords(recipe, line)}</p>
        {kitchen.scales.length === 0 ? (
          <NoScale />
        ) : (
          <WeighForm
            id={`weigh-${line.id}`}
            action={weighLine}
            hidden={{ episodeId: episode.id, lineId: line.id }}
            scales={scaleChoices(kitchen)}
            submit="Keep the reading"
            cancelHref={rowHref(episode.id, line.id)}
          />
        )}
      </section>
    </OpenedHere>
  );
}

/** Without a scale nothing says how close a reading is. */
export function NoScale() {
  return (
    <p>
      There is no scale yet.{' '}
      <Link href="/kitchen" className="link">
        Add one to the kitchen
      </Link>
    </p>
  );
}
