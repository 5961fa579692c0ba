import { ButtonLink } from '../../../_ui/button';
import { DownloadLink } from '../../../_ui/download-link';
import { RunningOrder, type RunningOrderPart } from '../../../_ui/running-order';
import { SlateHead } from '../../../_ui/slate-head';
import { STANDING_WORDS, type LockStanding } from '#lib/lock/lock-standing';
import { printRuntime } from '#lib/units/print';
import { ChangeOrder } from './change-order';
import { EditLink } from './edit-link';
import { EpisodeForm } from './episode-form';
import { OpenedHere } from './opened-here';
import { editHref, revOf, type EpisodeView } from './view';

interface Props {
  readonly view: EpisodeView;
  readonly stage: string;
  /** Filming and publishing dates as read, or null where none is set. */
  readonly filming: string | null;
  readonly publishing: string | null;
  readonly numbers: LockStanding;
  /** The whole length of the cut, in seconds. */
  readonly totalS: number;
}

/** The slate, the running order as sticks, and the promise of the episode. */
export function EpisodeHead({ view, stage, filming, publishing, numbers, totalS }: Props) {
  const { episode } = view.file;
  return (
    <>
      <SlateHead
        kind="Episode"
        title={episode.title}
        shut={numbers === 'locked'}
        cells={[
          { name: 'Film', value: filming ?? 'not set' },
          { name: 'Publish', value: publishing ?? 'not set' },
          { name: 'Stage', value: stage },
          { name: 'Numbers', value: STANDING_WORDS[numbers] },
        ]}
      />
      <RunningOrder total={printRuntime(totalS)} parts={parts(view)} />
      <ChangeOrder view={view} />
      <div id={`row-${episode.id}`} className="mb-12">
        {view.editing === episode.id ? (
          <OpenedHere rowId={`row-${episode.id}`} closeHref={`/episodes/${episode.id}`}>
            <EpisodeForm
              kept={view.kept ?? null}
              episodeId={episode.id}
              rev={revOf(view, episode.id)}
              title={episode.title}
              hook={episode.hook}
              region={episode.region}
              publishOn={episode.publishOn ?? ''}
              disclosure={episode.disclosure}
              cancelHref={`/episodes/${episode.id}`}
            />
          </OpenedHere>
        ) : (
          <div className="flex flex-wrap items-end justify-between gap-x-10 gap-y-3">
            <p className="max-w-[62ch] text-lead">
              {episode.hook || <span className="text-soft">No hook yet.</span>}{' '}
              <EditLink href={editHref(episode.id, episode.id)} what="title, hook and date" />
            </p>
            <div className="flex flex-wrap gap-3">
              <ButtonLink href={`/episodes/${episode.id}/changes`} size="small">
                What changed
              </ButtonLink>
              <ButtonLink href={`/episodes/${episode.id}/export`} size="small" download>
                Episode file
              </ButtonLink>
              <DownloadLink
                href={`/episodes/${episode.id}/export/bundle`}
                name="episode-bundle.zip"
                size="small"
              >
                All as one zip
              </DownloadLink>
            </div>
          </div>
        )}
      </div>
    </>
  );
}

function parts({ file, numbers }: EpisodeView): readonly RunningOrderPart[] {
  return file.episode.segments.map((segment) => {
    const energy = segment.recipe?.lines.length
      ? numbers('energyKcal', { kind: 'whole', segmentId: segment.id })
      : null;
    return {
      id: segment.id,
      kind: segment.recipe ? 'dish' : 'talk',
      title: segment.title,
      seconds: segment.plannedS,
      runtime: printRuntime(segment.plannedS),
      href: `#row-${segment.id}`,
      ...(energy && {
        note: energy.number === null ? energy.text : `${energy.text} ${energy.unit}`,
      }),
    };
  });
}
