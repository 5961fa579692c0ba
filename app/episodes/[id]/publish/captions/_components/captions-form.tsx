import type { Captions } from '#lib/cut/captions';
import type { CaptionCorrection } from '#lib/overview/caption-corrections';
import { Button } from '../../../../../_ui/button';

interface Props {
  readonly episodeId: string;
  readonly textId: string;
  readonly name: string;
  readonly format: Captions['format'];
  readonly version: string;
  readonly corrections: readonly CaptionCorrection[];
}

const FORMATS = [
  ['webvtt', 'WebVTT'],
  ['subrip', 'SubRip'],
] as const;

/** Captions with a tick for each number that is off. Nothing is ticked before the person does it. */
export function CaptionsForm({ episodeId, textId, name, format, version, corrections }: Props) {
  const id = `captions-${textId}`;
  return (
    <form
      method="get"
      action={`/episodes/${encodeURIComponent(episodeId)}/publish/captions/corrected`}
      aria-labelledby={`${id}-name`}
    >
      <input type="hidden" name="text" value={textId} />
      <input type="hidden" name="version" value={version} />
      <h2 id={`${id}-name`}>{name === '' ? 'Captions' : name}</h2>
      {corrections.length === 0 ? (
        <p className="mt-2 text-soft">No number in them is off and has better words.</p>
      ) : (
        <fieldset className="mt-2 min-w-0 border-t-[1.5px] border-ink">
          <legend className="unseen">Corrections to accept</legend>
          {corrections.map(({ key, place, said, right, why }) => (
            <div key={key} className="flex min-h-11 items-start gap-3 border-b border-line py-2">
              <input
                id={`${id}-${key}`}
                type="checkbox"
                name="accept"
                value={key}
                className="mt-0.5 size-5 shrink-0 accent-ink"
                aria-describedby={`${id}-${key}-why`}
              />
              <div className="min-w-0">
                <label htmlFor={`${id}-${key}`} className="block wrap-anywhere">
                  {place !== '' && `${place}: `}“{said}” becomes “{right}”
                </label>
                <p id={`${id}-${key}-why`} className="text-fine text-soft wrap-anywhere">
                  {why}
                </p>
              </div>
            </div>
          ))}
        </fieldset>
      )}
      <p className="mt-3 max-w-[60ch] text-fine text-soft">
        Only what is ticked is written anew; all else and every time stays to the byte in the format
        the captions came in. What is heard stays what it is: put a card over the picture too.
      </p>
      <div className="mt-3 flex flex-wrap items-center gap-4 print:hidden">
        <label htmlFor={`${id}-format`} className="font-semibold">
          As
        </label>
        <select
          id={`${id}-format`}
          name="format"
          defaultValue={format}
          className="min-h-11 border-[1.5px] border-edge bg-raised px-2"
        >
          {FORMATS.map(([value, words]) => (
            <option key={value} value={value}>
              {words}
              {value === format ? ' (as they came in)' : ''}
            </option>
          ))}
        </select>
        <Button tone="go">Download the captions</Button>
      </div>
    </form>
  );
}
