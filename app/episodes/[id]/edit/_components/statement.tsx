'use client';

import Link from 'next/link';
import { Button } from '../../../../_ui/button';
import { CopyButton } from '../../../../_ui/copy-button';
import { Icon } from '../../../../_ui/icons';
import type { Sound } from '../_sound/use-sound';
import { ClaimPart } from './claim-part';
import { MendReading } from './mend-reading';
import { Misheard } from './misheard';
import { WaysPart } from './ways-part';
import type { EditPage, Row } from './view';

interface Props {
  readonly page: EditPage;
  readonly row: Row;
  readonly sound: Sound;
}

/** A statement opened: why it stands as it does, what to say, how to mend it, and how it was read. */
export function Statement({ page, row, sound }: Props) {
  const { sayInstead, heard, standing } = row;
  const say = `say-${row.id}`;
  return (
    <div className="grid gap-4 px-3 pt-1 pb-5 md:pl-[5.75rem]">
      <Why row={row} />
      {sayInstead !== null && (
        <div>
          <h4 className="lettering text-fine text-soft">Say instead</h4>
          <p className="flex flex-wrap items-center gap-x-4 gap-y-1">
            <span id={say} className="text-lead font-semibold">
              {sayInstead}
            </span>
            <CopyButton text={sayInstead} label="Copy" shownIn={say} tone="plain" />
          </p>
        </div>
      )}
      {heard !== null && sound.name !== null && (
        <div>
          <Button type="button" size="small" onClick={() => sound.hear(heard.fromS, heard.toS)}>
            Hear it
            <span className="unseen">: five seconds around {row.place}</span>
          </Button>
        </div>
      )}
      <Misheard page={page} row={row} />
      <WaysPart row={row} />
      <ClaimPart page={page} row={row} />
      <HowRead row={row} />
      <MendReading key={`${row.id} ${row.mend?.id ?? ''}`} page={page} row={row} />
      {standing === 'aside' && <p className="text-fine text-soft">Nothing is held against it.</p>}
    </div>
  );
}

function Why({ row }: { readonly row: Row }) {
  const { sentence, why, difference, remark, caution, link, timecode, dish } = row;
  const place = [
    timecode && `${timecode.from} to ${timecode.to}`,
    dish !== null && `in ${dish}`,
  ].filter(Boolean);
  return (
    <div>
      <p className="max-w-[65ch] text-soft">“{sentence}”</p>
      {place.length > 0 && <p className="text-fine text-soft">{place.join(', ')}</p>}
      {why !== '' && <p className="mt-2 max-w-[65ch]">{why}</p>}
      {difference !== null && <p className="font-semibold">{difference}</p>}
      {remark !== null && <p className="max-w-[65ch] text-fine text-soft">{remark}</p>}
      {caution !== null && <p className="mt-1 max-w-[65ch] text-fine text-soft">{caution}</p>}
      {link && (
        <Link href={link.href} className="link inline-flex min-h-8 items-center gap-1.5">
          <Icon name="scale" />
          {link.words}
        </Link>
      )}
    </div>
  );
}

function HowRead({ row }: { readonly row: Row }) {
  if (row.how.length === 0) return null;
  return (
    <details>
      <summary className="link min-h-8 content-center">How it was read</summary>
      <ol className="mt-1 list-decimal pl-6 text-fine">
        {row.how.map(({ stage, words, as }, at) => (
          <li key={at}>
            {words === '' ? '' : `“${words}”: `}
            {stage}, {as}
          </li>
        ))}
      </ol>
    </details>
  );
}
