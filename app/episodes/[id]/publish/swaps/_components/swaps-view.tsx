import Link from 'next/link';
import { ButtonForm } from '../../../../../_forms/button-form';
import { CopyButton } from '../../../../../_ui/copy-button';
import { EmptyState } from '../../../../../_ui/empty-state';
import { PastedText } from '../../../../../_ui/pasted-text';
import { SlateHead } from '../../../../../_ui/slate-head';
import { RowHead, Table, Td, Th, Tr } from '../../../../../_ui/table';
import { dishesOf } from '#lib/episode/context';
import type { Variant } from '#lib/episode/publish-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import type { LockTold } from '#lib/publish/lock-words';
import type { SwapTable } from '#lib/swap/swap-words';
import { LastChange, type LastAct } from '../../../_components/last-change';
import { LockLine } from '../../_components/lock-line';
import { removeSwap } from '../actions';
import { dishSwapsHref } from '../steps-text';

/** What the page of all swaps draws from. */
export interface SwapsPage {
  readonly file: EpisodeFile;
  readonly variants: readonly Variant[];
  readonly revs: Readonly<Record<string, number>>;
  readonly lock: LockTold;
  readonly table: SwapTable;
  readonly last: LastAct | null;
}

const TEXT = 'swaps-text';

/** All saved swaps in a table, as text to paste, and the dishes that another can be tried with. */
export function SwapsView({ page }: { readonly page: SwapsPage }) {
  const { file, table, lock } = page;
  const { episode } = file;
  return (
    <>
      <SlateHead kind="Swaps" title={episode.title} shut={lock.standing === 'locked'} />
      <LockLine episodeId={episode.id} told={lock} />
      <section aria-labelledby="saved">
        <h2 id="saved">Saved swaps</h2>
        {table.rows.length === 0 ? (
          <div className="mt-2">
            <EmptyState title="No swaps yet">
              Choose a dish below and try what a viewer asks for: another food, another amount, one
              ingredient less. What it changes stands there at once.
            </EmptyState>
          </div>
        ) : (
          <Saved page={page} />
        )}
      </section>
      <section aria-labelledby="try-dish" className="mt-10 print:hidden">
        <h2 id="try-dish">Try a swap</h2>
        <ul className="mt-1">
          {dishesOf(episode.segments).map(({ id, title }) => (
            <li key={id}>
              <Link
                className="link inline-flex min-h-11 items-center"
                href={dishSwapsHref(episode.id, id)}
              >
                {title}
              </Link>
            </li>
          ))}
        </ul>
      </section>
      <p className="mt-8 print:hidden">
        <Link
          className="link inline-flex min-h-11 items-center"
          href={`/episodes/${episode.id}/publish`}
        >
          Publish
        </Link>
      </p>
      <LastChange episodeId={episode.id} last={page.last} formOpen={false} />
    </>
  );
}

function Saved({ page }: { readonly page: SwapsPage }) {
  const { table, variants, revs, file } = page;
  const episodeId = file.episode.id;
  return (
    <>
      <Table
        caption="Saved swaps and what they change"
        stacks
        head={
          <>
            <Th>swap</Th>
            <Th>what it changes</Th>
            <Th>
              <span className="unseen">change it</span>
            </Th>
          </>
        }
      >
        {table.rows.map(({ variantId, name, dish, of, cells, problem }) => {
          const variant = variants.find(({ id }) => id === variantId);
          return (
            <Tr
              key={variantId ?? `day ${name}`}
              {...(variantId === null ? {} : { id: `swap-${variantId}` })}
              open={problem !== null}
            >
              <RowHead>
                <b className="font-semibold">{name}</b>
                <span className="block text-fine text-soft">
                  {[dish, of].filter(Boolean).join(', ')}
                </span>
              </RowHead>
              <Td>{problem ?? cells.map(({ text }) => text).join('; ')}</Td>
              <Td>
                <span className="flex flex-wrap gap-x-4 print:hidden">
                  {variant && (
                    <Link
                      className="link inline-flex min-h-6 items-center text-fine"
                      href={dishSwapsHref(episodeId, variant.segmentId, {
                        variantId,
                        steps: variant.steps,
                      })}
                      aria-label={`Change the swap ${name}`}
                    >
                      Change
                    </Link>
                  )}
                  {variantId !== null && (
                    <ButtonForm
                      action={removeSwap}
                      values={{ episodeId, variantId, rev: revs[variantId] ?? 0 }}
                      label={`Take out the swap ${name}`}
                    >
                      Take out
                    </ButtonForm>
                  )}
                </span>
              </Td>
            </Tr>
          );
        })}
      </Table>
      <h3 className="mt-8">As text</h3>
      <div className="mt-2">
        <CopyButton text={table.text} label="Copy all swaps" shownIn={TEXT} />
        <Link
          className="link ml-5 inline-flex min-h-11 items-center print:hidden"
          href={`/episodes/${episodeId}/cards`}
        >
          As cards
        </Link>
      </div>
      <div className="mt-3">
        <PastedText id={TEXT} text={table.text} />
      </div>
    </>
  );
}
