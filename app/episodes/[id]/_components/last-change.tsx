'use client';

import Link from 'next/link';
import { useEffect, useRef, useState, type RefObject } from 'react';
import { ButtonForm } from '../../../_forms/button-form';
import { takeBack } from '../actions';

/** The last act on the episode, as its line tells it. */
export interface LastAct {
  readonly groupId: string;
  /** What the person did, as the journal calls it: "Correct what went out". */
  readonly label?: string;
  readonly words: string;
  readonly when: string;
}

interface Props {
  readonly episodeId: string;
  readonly last: LastAct | null;
  /** While a form is open it keeps its place in the page, so that it covers no field. */
  readonly formOpen: boolean;
}

/** How long it stands over a small page after an act, in milliseconds. Common practice, no source. */
const NEWS_MS = 20_000;

/**
 * What was done last, at the lower edge of the window wherever the page stands, with the way to undo it. It
 * stays until something else is done; on a small screen, where it would cover much, it stands over the page only right
 * after the act, and then at the page's end. Where the focus went with what was taken out, it comes here.
 */
export function LastChange({ episodeId, last, formOpen }: Props) {
  const element = useRef<HTMLDivElement>(null);
  const groupId = last?.groupId;
  const shown = useRef(groupId);
  const isNews = useNews(groupId, element);
  useEffect(() => {
    if (shown.current === groupId) return;
    shown.current = groupId;
    // After the row of a form that closed has taken the focus, if it is still there.
    const frame = requestAnimationFrame(() =>
      requestAnimationFrame(() => {
        if (document.activeElement !== document.body) return;
        element.current?.querySelector<HTMLElement>('button')?.focus({ preventScroll: true });
      }),
    );
    return () => cancelAnimationFrame(frame);
  }, [groupId]);
  return (
    <div
      ref={element}
      className={`last-change mt-10 print:hidden ${formOpen ? '' : `bottom-0 z-10 ${isNews ? 'sticky' : 'md:sticky'}`} ${last ? 'border-t-[1.5px] border-ink bg-paper py-1.5' : ''}`}
    >
      <div className="flex flex-wrap items-center gap-x-5 gap-y-0.5">
        <p role="status" className="line-clamp-2 min-w-0 flex-1 basis-64 text-fine">
          {last && (
            <>
              <span className="text-soft">{last.when}</span> {last.words}
            </>
          )}
        </p>
        {last && (
          <div className="flex items-center gap-4">
            <ButtonForm
              action={takeBack}
              values={{ episodeId, groupId: last.groupId }}
              tone="plain"
            >
              Undo<span className="unseen">: {last.words}</span>
            </ButtonForm>
            <Link href={`/episodes/${episodeId}/changes`} className="link text-fine">
              What changed
            </Link>
          </div>
        )}
      </div>
    </div>
  );
}

/** Whether another act than at first was done, and not long ago; as long as the focus is in the line it is news. */
function useNews(groupId: string | undefined, line: RefObject<HTMLElement | null>): boolean {
  const [first] = useState(groupId);
  const [old, setOld] = useState(first);
  useEffect(() => {
    const timer = setInterval(() => {
      if (line.current?.contains(document.activeElement)) return;
      setOld(groupId);
      clearInterval(timer);
    }, NEWS_MS);
    return () => clearInterval(timer);
  }, [groupId, line]);
  return groupId !== first && groupId !== old;
}
