import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { DESCRIPTION_FORMS } from '#lib/episode/publish-schema';
import { lockDifference } from '#lib/lock/lock-difference';
import { inputsHash } from '#lib/lock/numbers-lock';
import { saidStandings } from '#lib/overview/said-standing';
import { heldAgainst } from '#lib/publish/copied-text';
import { houseLayout } from '#lib/publish/description/layout';
import { pieceRows } from '#lib/publish/piece-rows';
import { structuredData } from '#lib/publish/structured/structured-data';
import { readRevisions } from '#lib/store/read-episode';
import { readCopied } from '#lib/store/read-locks';
import { localMoment } from '#lib/units/local-date';
import { readHeld } from '../corrections/read-held';
import { lastAct } from '../last-act';
import { PublishView } from './_components/publish-view';
import { readDescription, type ReadDescription, type WhichText } from './read-description';
import { readPromises } from './read-promises';
import { droppable } from './schema';

export const metadata: Metadata = { title: 'Publish' };

interface Props {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export default async function PublishPage({ params, searchParams }: Props) {
  const { id } = await params;
  const asked = await searchParams;
  // First, so that what changes meanwhile is a conflict and never overwritten.
  const revs = await readRevisions(id);
  const at = new Date();
  const read = await readDescription(id, at);
  if (!read) notFound();
  const { file, figures, publish, lock } = read;
  const form = DESCRIPTION_FORMS.find((each) => each === asked.form) ?? 'plain';
  const without = droppable(String(asked.without ?? ''));
  const moment = (when: Date) => localMoment(when, file.kitchen.zone);
  const held = await readHeld(file, figures, at);
  return (
    <PublishView
      page={{
        file,
        description: read.describe({ form, without }),
        figures: publish.figures,
        numbers: publish.numbers,
        revs,
        last: await lastAct(file),
        lock: lock && {
          at: moment(lock.at),
          seq: lock.seq,
          sha256: lock.sha256,
          difference: lockDifference(lock.snapshot, file, figures),
          broken: publish.changed?.reason ?? null,
        },
        putRight:
          held?.needed.kind === 'numbers'
            ? {
                numbers: held.needed.numbers.length,
                seq: held.lock.seq,
                isCopied: held.lock.copiedAt !== null,
                isPublic: held.isPublic,
              }
            : null,
        ofLock: publish.ofLock,
        changed: publish.changed?.dishes ?? [],
        layout: houseLayout(file.creator.layout),
        inputsSha256: inputsHash(file),
        said: saidStandings(file, figures),
        promises: await readPromises(read),
        structured: structuredData(publish),
        pieces: pieceRows(publish, file),
        copied: await copiedTexts(id, read, moment),
      }}
    />
  );
}

/** Texts that were copied, each held against the same text as it is now. */
async function copiedTexts(id: string, { textOf }: ReadDescription, moment: (at: Date) => string) {
  const made = new Map<string, string>();
  const textNow = (which: WhichText) => {
    const key = `${which.form} ${which.without.join(',')}`;
    const text = made.get(key) ?? textOf(which);
    made.set(key, text);
    return text;
  };
  return (await readCopied(id)).map(({ form: kept, at, ...copied }) => {
    const form = DESCRIPTION_FORMS.find((each) => each === kept) ?? 'plain';
    const held = heldAgainst(copied.text, (without) => textNow({ form, without }));
    return { ...copied, at: moment(at), form, ...held };
  });
}
