'use client';

import { useEffect, useState } from 'react';
import { buttonClass } from '../../../../_ui/button';
import { StatusLine } from '../../../../_ui/status-line';

interface Props {
  readonly href: string;
  /** Where the progress of a zip is told, by its job. */
  readonly progress: string;
}

/** Downloads all cards in one zip and tells how many are drawn; without scripts it is a plain download. */
export function AllInOneZip({ href, progress }: Props) {
  const [job, setJob] = useState<string | null>(null);
  const [told, setTold] = useState('');
  useEffect(() => {
    if (job === null) return undefined;
    const source = new EventSource(`${progress}?job=${job}`);
    source.addEventListener('progress', ({ data }: MessageEvent<string>) => {
      const { drawn, of, over } = JSON.parse(data) as Record<'drawn' | 'of', number> & {
        readonly over: boolean;
      };
      if (over) setTold(drawn === of ? `All ${of} cards are drawn.` : 'The download was ended.');
      else setTold(of === 0 ? 'Drawing the cards …' : `${drawn} of ${of} cards drawn`);
    });
    source.addEventListener('over', () => source.close());
    return () => source.close();
  }, [job, progress]);
  return (
    <div className="mt-3">
      <a
        href={href}
        download
        className={buttonClass('go')}
        onClick={(event) => {
          const name = crypto.randomUUID();
          event.currentTarget.href = `${href}&job=${name}`;
          setTold('Drawing the cards …');
          setJob(name);
        }}
      >
        All cards in one zip
      </a>
      <div className="mt-2">
        <StatusLine>{told}</StatusLine>
      </div>
    </div>
  );
}
