'use client';

import { useRef } from 'react';
import { SoundPart } from '../_sound/sound-part';
import { useSound } from '../_sound/use-sound';
import { Filters } from './filters';
import { StatementList } from './statement-list';
import { Strip } from './strip';
import { Transcript } from './transcript';
import { useDesk } from './use-desk';
import type { EditPage } from './view';

/** The transcript and its statements beside each other: what is chosen in one is shown in the other. */
export function Desk({ page }: { readonly page: EditPage }) {
  const desk = useDesk(page);
  const sound = useSound(page.episodeId);
  const panes = useRef<HTMLDivElement>(null);
  const { filter, shown, chosen, open, tick, byKey } = desk;
  return (
    <section id="said" aria-labelledby="said-title" className="noscript:hidden print:hidden">
      <h2 id="said-title">What was said</h2>
      <Strip
        page={page}
        chosen={chosen}
        onChoose={(id) => {
          desk.choose(id);
          // The strip stands above them, on a small screen far above.
          panes.current?.scrollIntoView({ block: 'nearest' });
        }}
      />
      <SoundPart sound={sound} />
      <Filters page={page} filter={filter} onFilter={desk.setFilter} />
      <div ref={panes} className="grid gap-x-6 gap-y-4 lg:grid-cols-[minmax(0,5fr)_minmax(0,7fr)]">
        <div className="min-w-0 border-y-[1.5px] border-ink">
          <Transcript page={page} chosen={chosen} tick={tick} onChoose={desk.choose} />
        </div>
        <div className="min-w-0 border-y-[1.5px] border-ink">
          <StatementList
            page={page}
            shown={shown}
            chosen={chosen}
            open={open}
            tick={tick}
            byKey={byKey}
            sound={sound}
            onChoose={desk.choose}
            onOpen={desk.toggle}
            onStep={desk.step}
          />
        </div>
      </div>
    </section>
  );
}
