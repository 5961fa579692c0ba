import Link from 'next/link';
import { STATE_WORDS } from '../../../_ui/words';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import { lineReadings } from '#lib/figures/readings';
import { weighLine } from '../weigh-actions';
import { KeepYieldPart } from './keep-yield-part';
import { OpenedHere } from './opened-here';
import { Readings } from './readings';
import { rowHref, WEIGHED, weighHref, type EpisodeView, type Weighed } from './view';
import { addsToWords, cookedWords, leftWords, scaleChoices } from './weighed-words';
import { HIT } from './weigh-field';
import { WeighForm } from './weigh-form';
import { heldFor, nextToWeigh, scaleFor, sharingOf } from './weigh-view';

interface Props {
  readonly view: EpisodeView;
  readonly recipe: Recipe;
  readonly line: RecipeLine;
  /** What of it is on the scale. */
  readonly of: Weighed;
}

/** An ingredient on the scale: what was weighed of it, and one more reading. */
export function WeighLine({ view, recipe, line, of }: Props) {
  const { episode, kitchen } = view.file;
  const { leftBehind } = line;
  const behind = leftBehind.kind === 'none' ? { where: 'pan', made: 'alike' } : leftBehind;
  return (
    <OpenedHere key={of} rowId={`row-${line.id}`} closeHref={rowHref(episode.id, line.id)}>
      <section
        aria-label={`Weigh: ${line.text}`}
        className="grid gap-3 pt-2 max-md:[&_button]:min-h-14"
      >
        <WeighedNav episodeId={episode.id} line={line} of={of} />
        <Readings
          view={view}
          readings={lineReadings(recipe, line.id, of).readings}
          what={line.text}
        />
        <Readings
          view={view}
          readings={lineReadings(recipe, line.id, 'container').readings}
          what={`container of ${line.text}`}
        />
        <p className="max-w-[62ch] text-soft">{sayOf(view, recipe, line, of)}</p>
        {of === 'cooked' && <KeepYieldPart view={view} recipe={recipe} line={line} />}
        {kitchen.scales.length === 0 ? (
          <NoScale />
        ) : (
          <WeighForm
            id={`weigh-${line.id}`}
            action={weighLine}
            hidden={{ episodeId: episode.id, lineId: line.id, of }}
            of={of}
            scales={scaleChoices(kitchen)}
            scaleId={scaleFor(recipe, kitchen)}
            held={heldOf(view, recipe, line, of)}
            sharing={sharingOf(view.file, recipe, line, SHARED[of])}
            {...(of === 'left' && { left: { where: behind.where, made: behind.made } })}
            next={of === 'raw' ? nextToWeigh(recipe, line.id) : null}
            submit="Keep the reading"
            cancelHref={rowHref(episode.id, line.id)}
          />
        )}
      </section>
    </OpenedHere>
  );
}

const SHARED: Readonly<Record<Weighed, string>> = {
  raw: 'Other ingredients lie on the scale with it',
  cooked: 'It was cooked together with other ingredients',
  left: 'Other ingredients are left in there with it',
};

/** Only what is weighed as its line says goes on a running total. */
function heldOf(view: EpisodeView, recipe: Recipe, line: RecipeLine, of: Weighed) {
  const held = heldFor(recipe, line, view.file.kitchen);
  return of === 'raw' ? held : { ...held, onScale: null };
}

function sayOf(view: EpisodeView, recipe: Recipe, line: RecipeLine, of: Weighed): string {
  if (of === 'raw') return addsToWords(recipe, line);
  if (of === 'cooked') {
    const known = cookedWords(view.file, recipe, line);
    if (known) return `${known}. A new reading adds to what was weighed.`;
    return line.asBought
      ? 'Its raw weight is with peel, shell or bone, so the two weights are no cooked weight of the food.'
      : 'Weigh it cooked, without what stays in the pan. With its raw weight that is its cooked weight, which this food can keep for next time.';
  }
  const known = leftWords(recipe, line);
  const typed = line.leftBehind.kind === 'mass' ? ' Once weighed, the reading counts instead.' : '';
  return `${known ? `${known}.${typed}` : 'All of it is eaten, as far as is said.'} Weigh the pan, tray or bowl with what is left in it, and take off what it weighs empty.`;
}

/** Which weight of the ingredient it is. */
function WeighedNav({
  episodeId,
  line,
  of,
}: {
  readonly episodeId: string;
  readonly line: RecipeLine;
  readonly of: Weighed;
}) {
  const raw = line.state === 'raw' || line.state === 'dry';
  const words: Readonly<Record<Weighed, string>> = {
    raw: raw ? STATE_WORDS[line.state] : `the ingredient, ${STATE_WORDS[line.state]}`,
    cooked: 'cooked',
    left: 'what is left',
  };
  return (
    <nav aria-label={`What is weighed of ${line.text}`} className="flex flex-wrap gap-x-6">
      {WEIGHED.filter((each) => each !== 'cooked' || raw || each === of).map((each) => (
        <Link
          key={each}
          href={weighHref(episodeId, line.id, each)}
          scroll={false}
          aria-current={each === of ? 'true' : undefined}
          className={`${HIT} ${each === of ? 'border-b-[3px] border-ink font-semibold' : 'link'}`}
        >
          {words[each]}
        </Link>
      ))}
    </nav>
  );
}

/** Without a scale nothing says how close a reading is. */
export function NoScale() {
  return (
    <p>
      There is no scale yet.{' '}
      <Link href="/kitchen" className="link">
        Add one to the kitchen
      </Link>
    </p>
  );
}
