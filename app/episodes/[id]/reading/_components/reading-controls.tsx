import { otherRate, otherSize, READING_SIZES, type ReadingMove } from '#lib/cut/reading-pace';
import { Button } from '../../../../_ui/button';
import type { ReadingSettings } from './settings';

interface Props {
  readonly going: boolean;
  readonly settings: ReadingSettings;
  readonly rate: number;
  readonly move: (move: ReadingMove) => void;
  readonly choose: (patch: Partial<ReadingSettings>) => void;
  /** Fills the screen with the text; null where the browser cannot. */
  readonly fill: (() => void) | null;
}

/** What moves the text on the device itself, and how it looks. */
export function ReadingControls({ going, settings, rate, move, choose, fill }: Props) {
  const { size, mirrored, night } = settings;
  return (
    <div className="flex flex-wrap items-center gap-x-6 gap-y-3 print:hidden">
      <div className="flex flex-wrap gap-2">
        <Button type="button" tone="go" onClick={() => move('toggle')}>
          {going ? 'Stop' : 'Go'}
        </Button>
        <Button type="button" onClick={() => move('before')}>
          Before
        </Button>
        <Button type="button" onClick={() => move('next')}>
          Next
        </Button>
        <Button type="button" onClick={() => move('first')}>
          To the beginning
        </Button>
      </div>
      <RateButtons rate={rate} choose={(perMinute) => choose({ perMinute })} />
      <div role="group" aria-label="Letters" className="flex items-center gap-2">
        <Button
          type="button"
          size="small"
          disabled={size === 0}
          onClick={() => choose({ size: otherSize(size, -1) })}
        >
          Smaller
        </Button>
        <Button
          type="button"
          size="small"
          disabled={size === READING_SIZES.length - 1}
          onClick={() => choose({ size: otherSize(size, 1) })}
        >
          Larger
        </Button>
      </div>
      <div className="flex flex-wrap gap-2">
        <Choice on={mirrored} words="Mirrored" set={(on) => choose({ mirrored: on })} />
        <Choice on={night} words="Kitchen night" set={(on) => choose({ night: on })} />
        {fill && (
          <Button type="button" size="small" onClick={fill}>
            Fill the screen
          </Button>
        )}
      </div>
    </div>
  );
}

interface RateProps {
  readonly rate: number;
  readonly choose: (perMinute: number) => void;
}

/** Words a minute, slower and faster by ten. */
export function RateButtons({ rate, choose }: RateProps) {
  return (
    <div role="group" aria-label="Speed" className="flex items-center gap-2">
      <Button type="button" size="small" onClick={() => choose(otherRate(rate, -1))}>
        Slower
      </Button>
      <output className="min-w-36 text-center">{rate} words a minute</output>
      <Button type="button" size="small" onClick={() => choose(otherRate(rate, 1))}>
        Faster
      </Button>
    </div>
  );
}

interface ChoiceProps {
  readonly on: boolean;
  readonly words: string;
  readonly set: (on: boolean) => void;
}

function Choice({ on, words, set }: ChoiceProps) {
  return (
    <label className="flex min-h-11 items-center gap-2">
      <input
        type="checkbox"
        className="size-5 accent-ink"
        checked={on}
        onChange={({ target }) => set(target.checked)}
      />
      {words}
    </label>
  );
}
