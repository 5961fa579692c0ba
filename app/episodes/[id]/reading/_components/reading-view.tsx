'use client';

import Link from 'next/link';
import { useCallback, useEffect, useMemo, useRef } from 'react';
import { useAwake } from '../../../../_ui/use-awake';
import {
  leftText,
  placeText,
  READING_SIZES,
  readingOffset,
  readingPace,
} from '#lib/cut/reading-pace';
import type { ScriptItem } from '#lib/overview/reading-script';
import type { RelayMessage } from '../_relay/message';
import { useRelay } from '../_relay/use-relay';
import { ReadingControls } from './reading-controls';
import { ScriptText } from './script-text';
import { useCanFill, useSettings, useStepping } from './settings';
import { useReading } from './use-reading';

interface Props {
  readonly episodeId: string;
  readonly items: readonly ScriptItem[];
  /** The creator's own rate. */
  readonly perMinute: number;
}

/** The sentences beside the camera, going on by the rate of speaking; other devices may move them. */
export function ReadingView({ episodeId, items, perMinute }: Props) {
  const [settings, choose] = useSettings();
  const rate = settings.perMinute ?? perMinute;
  const pace = useMemo(() => readingPace(items, rate), [items, rate]);
  const [place, move] = useReading(items, pace);
  const stepping = useStepping();
  const canFill = useCanFill();
  const frame = useRef<HTMLDivElement>(null);
  const pane = useRef<HTMLDivElement>(null);
  const rows = useRef<(HTMLLIElement | null)[]>([]);
  useAwake(true);

  const hear = useCallback(
    (message: RelayMessage) => {
      if (message.kind === 'move') move(message.move);
      else if (message.kind === 'rate') choose({ perMinute: message.perMinute });
    },
    [move, choose],
  );
  const [standing, tell] = useRelay(episodeId, hear);
  const { item, going, share } = place;
  // Others are told of each step, not of each moment.
  const latest = useRef(share);
  useEffect(() => {
    latest.current = share;
  }, [share]);
  useEffect(() => {
    // What is told while the others are away may be what finds them again.
    if (standing === 'looking' || standing === 'full') return;
    tell({ kind: 'place', item, going, share: latest.current, perMinute: rate });
  }, [standing, tell, item, going, rate]);

  useEffect(() => {
    const lies = rows.current.map((row) => {
      return { top: row?.offsetTop ?? 0, height: row?.offsetHeight ?? 0 };
    });
    pane.current?.scrollTo({ top: readingOffset(place, lies, stepping) });
  }, [place, stepping, settings.size]);

  const fill = () => void frame.current?.requestFullscreen().catch(() => undefined);
  return (
    <div
      ref={frame}
      data-theme={settings.night ? 'night' : undefined}
      className="flex flex-col gap-3 bg-paper text-ink [&:fullscreen]:p-4"
    >
      <div className="flex flex-wrap items-baseline justify-between gap-x-6 print:hidden">
        <p className="text-lead">{placeText(place, items)}</p>
        <p className="font-slate text-figure font-semibold">
          {leftText(place, pace)} <span className="text-lead">left to read</span>
        </p>
      </div>
      <div
        ref={pane}
        role="region"
        aria-label="What is said"
        className="relative h-[62dvh] min-h-64 overflow-y-auto border-y-[1.5px] border-ink [:fullscreen_&]:h-auto [:fullscreen_&]:flex-1 print:h-auto print:overflow-visible print:border-0"
      >
        <div className="sticky top-0 z-10 h-0 print:hidden">
          <button
            type="button"
            className="block h-[62dvh] min-h-64 w-full [:fullscreen_&]:h-[80dvh]"
            onClick={() => move('toggle')}
          >
            <span className="unseen">{going ? 'Stop: tap anywhere' : 'Go on: tap anywhere'}</span>
          </button>
        </div>
        <ol
          style={{ fontSize: `${READING_SIZES[settings.size]}rem` }}
          className={`pt-[18dvh] pb-[50dvh] print:p-0 ${settings.mirrored ? 'scale-x-[-1] print:scale-x-100' : ''}`}
        >
          {items.map((each, at) => (
            <ScriptText
              key={each.key}
              item={each}
              here={at === item}
              ref={(row) => {
                rows.current[at] = row;
              }}
            />
          ))}
        </ol>
      </div>
      <ReadingControls
        going={going}
        settings={settings}
        rate={rate}
        move={move}
        choose={choose}
        fill={canFill ? fill : null}
      />
      <p className="text-fine text-soft print:hidden">
        Space goes and stops, arrows and the page keys of a pedal go by sentence, Home and End to
        the ends, Escape stops. It waits at each shot.{' '}
        <Link className="link" href="?remote">
          Use this device as the remote instead
        </Link>
        {standing === 'away' && ' No other device can move it: the program cannot be reached.'}
        {standing === 'refused' &&
          ' No other device can move it: the program refuses this one, open this page again.'}
        {standing === 'full' && ' No other device can move it: too many are connected.'}
      </p>
    </div>
  );
}
