'use client';

import { useEffect, useState } from 'react';
import { buttonClass } from '../../../../_ui/button';
import { StatusLine } from '../../../../_ui/status-line';
import type { ZipProgress } from '../zip-progress';
import { BEGUN, NO_ANSWER, zipWords, type ZipTold } from '../zip-words';

interface Props {
  readonly href: string;
  /** Where the progress of a zip is told, by its job. */
  readonly progress: string;
}

/** Downloads all cards in one zip and tells how many are drawn, or that it failed; without scripts it is a plain download. */
export function AllInOneZip({ href, progress }: Props) {
  const [job, setJob] = useState<string | null>(null);
  const [told, setTold] = useState<ZipTold | null>(null);
  useEffect(() => {
    if (job === null) return undefined;
    const source = new EventSource(`${progress}?job=${job}`);
    source.addEventListener('progress', ({ data }: MessageEvent<string>) => {
      setTold(zipWords(JSON.parse(data) as ZipProgress));
    });
    source.addEventListener('over', () => source.close());
    // It would ask again by itself, and a program that was started anew knows nothing of this zip.
    source.addEventListener('error', () => {
      source.close();
      setTold(NO_ANSWER);
    });
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
          setTold(BEGUN);
          setJob(name);
        }}
      >
        All cards in one zip
      </a>
      <div className="mt-2">
        <StatusLine tone={told?.failed ? 'hand' : 'usual'}>{told?.words}</StatusLine>
      </div>
    </div>
  );
}
