'use client';

import Link from 'next/link';
import { useCallback, useMemo, useState } from 'react';
import {
  leftText,
  placeText,
  READING_START,
  readingPace,
  type ReadingMove,
  type ReadingPlace,
} from '#lib/cut/reading-pace';
import type { ScriptItem } from '#lib/overview/reading-script';
import { Button } from '../../../../_ui/button';
import { useAwake } from '../../../../_ui/use-awake';
import type { RelayMessage } from '../_relay/message';
import type { RelayStanding } from '../_relay/standing';
import { useRelay } from '../_relay/use-relay';
import { RateButtons } from './reading-controls';
import { ScriptText } from './script-text';

interface Props {
  readonly episodeId: string;
  readonly items: readonly ScriptItem[];
  readonly perMinute: number;
}

const STANDING: Readonly<Record<RelayStanding, string>> = {
  looking: 'Looking for the program.',
  here: 'Nothing is read yet: open “Read to camera” on the screen by the camera.',
  away: 'The program cannot be reached: what is pressed here moves nothing.',
  refused: 'The program takes nothing from this device: open this page again.',
  full: 'Too many devices are connected: close one and open this page again.',
};

/** The second device: it shows where the reading is and moves it. */
export function RemoteView({ episodeId, items, perMinute }: Props) {
  const [seen, setSeen] = useState<(ReadingPlace & { readonly perMinute: number }) | null>(null);
  const hear = useCallback((message: RelayMessage) => {
    if (message.kind === 'place') setSeen(message);
  }, []);
  const [standing, tell] = useRelay(episodeId, hear);
  const place = seen ?? READING_START;
  const rate = seen?.perMinute ?? perMinute;
  const pace = useMemo(() => readingPace(items, rate), [items, rate]);
  const press = (move: ReadingMove) => () => tell({ kind: 'move', move });
  useAwake(true);
  const shown = items.slice(place.item, place.item + 2);
  return (
    <div className="grid max-w-2xl gap-4">
      {(seen === null || standing !== 'here') && (
        <p role="status" className="hatch px-3 py-2">
          {STANDING[standing]}
        </p>
      )}
      <p className="flex flex-wrap items-baseline justify-between gap-x-6 text-lead">
        {placeText(place, items)}
        <span className="font-slate text-figure font-semibold">
          {leftText(place, pace)} <span className="text-lead">left</span>
        </span>
      </p>
      <ol className="min-h-40 border-y-[1.5px] border-ink text-lead">
        {shown.map((item, at) => (
          <ScriptText key={item.key} item={item} here={at === 0} />
        ))}
      </ol>
      <div className="grid grid-cols-2 gap-3">
        <div className="col-span-2">
          <Button type="button" tone="go" size="day" onClick={press(place.going ? 'stop' : 'go')}>
            {place.going ? 'Stop' : 'Go'}
          </Button>
        </div>
        <Button type="button" size="day" onClick={press('before')}>
          Before
        </Button>
        <Button type="button" size="day" onClick={press('next')}>
          Next
        </Button>
        <Button type="button" size="day" onClick={press('first')}>
          Beginning
        </Button>
        <Button type="button" size="day" onClick={press('last')}>
          End
        </Button>
      </div>
      <RateButtons rate={rate} choose={(faster) => tell({ kind: 'rate', perMinute: faster })} />
      <p>
        <Link className="link" href="?">
          Read on this device instead
        </Link>
      </p>
    </div>
  );
}
