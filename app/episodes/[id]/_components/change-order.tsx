import { Disclosure } from '../../../_ui/disclosure';
import { MoveHandle } from '../../../_ui/reorder/move-handle';
import { Reorder } from '../../../_ui/reorder/reorder';
import { printRuntime } from '#lib/units/print';
import { orderSegments } from '../actions';
import type { EpisodeView } from './view';

interface Props {
  readonly view: EpisodeView;
}

/** The running order as a short list, to be put into another order. */
export function ChangeOrder({ view }: Props) {
  const { id: episodeId, segments } = view.file.episode;
  if (segments.length < 2) return null;
  return (
    <div className="-mt-5 mb-6 noscript:hidden">
      <Disclosure words="Change the running order">
        <Reorder
          ids={segments.map(({ id }) => id)}
          names={segments.map(({ title }) => title)}
          action={orderSegments}
          hidden={{ episodeId }}
        >
          <ol className="max-w-xl border-t border-line" aria-label="Running order, to be changed">
            {segments.map((segment) => (
              <li
                key={segment.id}
                data-member={segment.id}
                className="flex items-center gap-3 border-b border-line py-1.5 data-held:bg-sunk"
              >
                <MoveHandle id={segment.id} what={segment.title} />
                <span className="min-w-0 flex-1">{segment.title}</span>
                <span className="text-fine text-soft">{printRuntime(segment.plannedS)}</span>
              </li>
            ))}
          </ol>
        </Reorder>
      </Disclosure>
    </div>
  );
}
