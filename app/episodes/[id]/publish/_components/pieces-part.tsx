import { ButtonForm } from '../../../../_forms/button-form';
import { CopyButton } from '../../../../_ui/copy-button';
import { Disclosure } from '../../../../_ui/disclosure';
import { PastedText } from '../../../../_ui/pasted-text';
import { dishesOf } from '#lib/episode/context';
import { lockWords } from '#lib/publish/lock-words';
import type { PieceRow } from '#lib/publish/piece-rows';
import { printCount } from '#lib/units/print';
import { addPiece, changePiece, removePiece } from '../piece-actions';
import { LOCK_ID } from '../lock-href';
import { lengthWords } from './length-words';
import { PieceForm } from './piece-form';
import { revOf, toldOf, type PublishPage } from './view';

type PageProps = { readonly page: PublishPage };

/** What is made from the episode and goes out by itself, each with its own title and length and the episode's lock. */
export function PiecesPart({ page }: PageProps) {
  const { episode } = page.file;
  return (
    <section aria-labelledby="pieces" className="mt-10">
      <h2 id="pieces">Pieces</h2>
      <p className="mt-1 max-w-[70ch] text-soft">
        A clip of one dish, or a short text, that goes out by itself: with its own title and length,
        and the numbers of this episode’s lock. Every correction names them all.
      </p>
      <ul className="mt-2">
        {page.pieces.map((row) => (
          <PieceItem key={row.piece.id} page={page} row={row} />
        ))}
      </ul>
      <Disclosure words="Add a piece">
        <PieceForm
          id="new-piece"
          action={addPiece}
          hidden={{ episodeId: episode.id }}
          dishes={dishesOf(episode.segments)}
          initial={{ kind: 'clip', title: '', segmentIds: [], limit: page.layout.limit }}
          words="Add the piece"
        />
      </Disclosure>
    </section>
  );
}

type ItemProps = PageProps & { readonly row: PieceRow };

function PieceItem({ page, row }: ItemProps) {
  const { piece, of } = row;
  const { id, kind, title } = piece;
  const values = { episodeId: page.file.episode.id, pieceId: id, rev: revOf(page, id) };
  return (
    <li id={`piece-${id}`} className="border-b border-line py-4">
      <h3 className="wrap-anywhere">{title}</h3>
      <p className="text-soft">
        {kind === 'clip' ? 'Clip' : 'Text'} of{' '}
        {of === null ? 'the day' : of.join(', ') || 'no dish'}
      </p>
      {row.gone ? (
        <p className="hatch mt-1 py-2">
          Its dishes were taken out of the episode: say what it is of, or take it out.
        </p>
      ) : (
        <PieceOut page={page} row={row} />
      )}
      <div className="mt-2">
        <Disclosure words={`Change ${title}`}>
          <PieceForm
            id={`piece-form-${id}`}
            action={changePiece}
            hidden={values}
            dishes={dishesOf(page.file.episode.segments)}
            initial={piece}
            words="Save the piece"
          />
          <div className="mt-3">
            <ButtonForm
              action={removePiece}
              values={values}
              label={`Take out ${title}`}
              tone="hand"
            >
              Take out
            </ButtonForm>
          </div>
        </Disclosure>
      </div>
    </li>
  );
}

/** Its text exactly as it is pasted, with its length and how its lock stands. */
function PieceOut({ page, row }: ItemProps) {
  const { piece, made, afterLock } = row;
  const { text, length, limit, fits, without, empty } = made;
  const shownIn = `piece-text-${piece.id}`;
  return (
    <>
      <p className="mt-1">{standingOf(page, row)}</p>
      {afterLock.length > 0 && (
        <p className="hatch mt-1 py-2">
          Not in the lock, and so not in the text: {afterLock.join(', ')}.{' '}
          <a className="link" href={`#${LOCK_ID}`}>
            Lock again
          </a>
        </p>
      )}
      {!empty && (
        <>
          <p className={`text-fine ${fits ? 'text-soft' : 'font-semibold text-hand'}`}>
            {fits ? '' : 'Longer than its limit: '}
            {lengthWords(length, limit)}
            {without.length === 0 ? '' : ` Left out for its length: ${without.join(', ')}.`}
            {fits
              ? ''
              : ' What is left must be in it: numbers, allergens, cautions and the disclosure.'}
          </p>
          <div className="mt-2">
            <CopyButton
              text={text}
              label={`Copy ${piece.title}, ${printCount(length.codePoints)} of ${printCount(limit)}`}
              shownIn={shownIn}
              tone="plain"
            />
          </div>
          <div className="mt-2 max-w-3xl">
            <PastedText id={shownIn} text={text} />
          </div>
        </>
      )}
    </>
  );
}

/** The lock's standing with what has changed in the dishes of this piece, where any has. */
function standingOf(page: PublishPage, { changed, piece }: PieceRow): string {
  const told = toldOf(page);
  if (told.standing !== 'broken' || !told.ofLock) return lockWords(told);
  if (changed.length > 0) return lockWords({ ...told, reason: changed.join('; ') });
  const own = piece.segmentIds === null ? 'No dish' : 'No dish of this piece';
  return `${lockWords({ ...told, reason: null })} ${own} has changed.`;
}
