'use client';

import { useEffect, useRef } from 'react';
import { Disclosure } from '../../../../_ui/disclosure';
import { SoundPart } from '../_sound/sound-part';
import { useSound } from '../_sound/use-sound';
import { Filters } from './filters';
import { StatementList } from './statement-list';
import { Strip } from './strip';
import { Transcript } from './transcript';
import { useDesk } from './use-desk';
import { useNarrow } from './use-narrow';
import type { EditPage } from './view';

const PANE = 'min-w-0 border-y-[1.5px] border-ink';

/**
 * The transcript and its statements: what is chosen in one is shown in the other. Beside each other each has a window of
 * its own; on a narrow page the statements are part of it, and the transcript is folded away above them.
 */
export function Desk({ page }: { readonly page: EditPage }) {
  const desk = useDesk(page);
  const sound = useSound(page.episodeId);
  const narrow = useNarrow();
  const panes = useRef<HTMLDivElement>(null);
  useEffect(() => {
    // The page has become longer, so that a part below that the address names stands elsewhere.
    const below = narrow ? document.getElementById(window.location.hash.slice(1)) : null;
    if (!below || below.contains(panes.current)) return;
    const frame = requestAnimationFrame(() => below.scrollIntoView());
    return () => cancelAnimationFrame(frame);
  }, [narrow]);
  const { filter, shown, chosen, open, tick, byKey } = desk;
  const transcript = <Transcript page={page} chosen={chosen} tick={tick} onChoose={desk.choose} />;
  return (
    <section id="said" aria-labelledby="said-title" className="noscript:hidden print:hidden">
      <h2 id="said-title">What was said</h2>
      <Strip
        page={page}
        chosen={chosen}
        onChoose={(id) => {
          desk.choose(id);
          // The strip stands above them.
          if (!narrow) panes.current?.scrollIntoView({ block: 'nearest' });
        }}
        onReach={desk.reach}
      />
      <SoundPart sound={sound} />
      <Filters page={page} filter={filter} onFilter={desk.setFilter} />
      <div ref={panes} className="grid gap-x-6 gap-y-4 lg:grid-cols-[minmax(0,5fr)_minmax(0,7fr)]">
        {narrow ? (
          <Disclosure words="Transcript">
            <div className={PANE}>{transcript}</div>
          </Disclosure>
        ) : (
          <div className={PANE}>{transcript}</div>
        )}
        <div className={PANE}>
          <StatementList
            page={page}
            shown={shown}
            chosen={chosen}
            open={open}
            asked={desk.asked}
            tick={desk.askedTick}
            byKey={byKey}
            sound={sound}
            inPage={narrow}
            onChoose={desk.choose}
            onOpen={desk.toggle}
            onStep={desk.step}
          />
        </div>
      </div>
    </section>
  );
}
