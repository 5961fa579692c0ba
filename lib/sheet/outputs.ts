import type { EpisodeFile } from '#lib/episode/schema';
import { stableJson } from '#lib/episode/stable-json';
import { episodeFigures, type EpisodeFigures, type Figures } from '#lib/figures/episode-figures';
import { figureStatus, type Figure } from '#lib/figures/figure';
import { printFigure } from '#lib/figures/print-figure';
import { eveningText } from '#lib/sheet/evening-text';
import type { NumberScope, PublishedNumbers } from '#lib/figures/published-numbers';
import { readSnapshot } from '#lib/lock/locked-snapshot';
import { takeLock } from '#lib/lock/numbers-lock';
import { editFactsOf } from '#lib/overview/edit-facts-of';
import { descriptionText } from '#lib/publish/description';
import { evidence } from '#lib/publish/evidence';
import { numbersToPublish, type NumbersToPublish } from '#lib/publish/from-lock';
import { pieceText } from '#lib/publish/pieces';
import { dayCalendar } from '#lib/shoot/day-calendar';
import { dayFacts } from '#lib/shoot/day-facts';
import { daySheetCsv } from '#lib/shoot/day-sheet-csv';
import { daySheetText } from '#lib/shoot/day-sheet-text';
import { likelyDay } from '#lib/shoot/likely';
import { dayPlan } from '#lib/shoot/plan-day';
import { solveDay } from '#lib/shoot/solve-day';
import { shoppingCsv } from '#lib/shopping/shopping-csv';
import type { ShoppingList } from '#lib/shopping/list-types';
import { shoppingList } from '#lib/shopping/shopping-list';
import { shoppingText } from '#lib/shopping/shopping-text';

const DESCRIPTION_FILES = [
  ['description.txt', 'plain'],
  ['description.md', 'markdown'],
  ['description.html', 'html'],
] as const;

/** What the clock and chance are for this run: arguments, so that the same file gives the same bytes. */
export interface SheetClock {
  /** UTC instant that calendar entries and the lock are stamped with. */
  readonly now: string;
  readonly seed: number;
}

/** The lock that an episode's numbers go out with. */
export interface KeptLock {
  readonly seq: number;
  /** UTC instant. */
  readonly at: string;
  /** Canonical JSON as `takeLock` made it. */
  readonly snapshot: string;
  readonly sha256: string;
  readonly schemaVersion: number;
  readonly engineVersion: string;
}

/** What is kept of an episode beside its file and says what goes out. */
export interface KeptNumbers {
  /** Null where nothing is locked. */
  readonly lock: KeptLock | null;
  /** One text for each correction, the newest first. */
  readonly corrections: readonly string[];
}

/** The outputs by file name, each as text. Those of the day are left out where the file has none. */
export type Outputs = ReadonlyMap<string, string>;

/**
 * Everything that comes from an episode file, without browser or database: figures with their lock, the
 * shooting order, the day sheet and calendar, the shopping list, the description.
 * Same file and clock, same bytes.
 * @param kept where the file is not all that there is: numbers, description and pieces are those that go out, of the
 * lock and with the corrections, and the evidence is left out, since that of a kept lock is made with the day's log.
 * What is cooked, bought and filmed by is as the file has it.
 */
export function outputs(
  file: EpisodeFile,
  clock: SheetClock,
  kept: KeptNumbers | null = null,
): Outputs {
  const figures = episodeFigures(file);
  const publish = numbersToPublish(file, kept?.lock?.snapshot ?? null, figures);
  const shopping = shoppingList(file);
  const files = new Map([
    ['figures.json', stableJson(figuresOf(file, publish, clock, kept?.lock ?? null))],
    ['shopping.json', stableJson(shopping)],
    ['shopping.txt', shoppingText(shopping)],
    ['shopping.csv', shoppingCsv(shopping)],
    ...DESCRIPTION_FILES.map(([name, form]): [string, string] => {
      const text = descriptionText(publish, { form, corrections: kept?.corrections ?? [] });
      return [name, `${text}\n`];
    }),
    ...piecesFile(file, publish),
  ]);
  if (kept === null) {
    files.set('evidence.json', stableJson(evidenceData(file, figures, shopping, clock)));
  }
  if (file.day) {
    const solved = solveDay(dayFacts(file), { seed: clock.seed });
    const plan = dayPlan(file, solved);
    const likely = likelyDay(file, solved, { seed: clock.seed });
    files.set('shooting-order.json', stableJson(plan));
    // An order that breaks a rule is not one to keep: nothing is likely of it.
    if (likely !== null) files.set('risk.json', stableJson(likely));
    files.set('day-sheet.txt', daySheetText(file, plan));
    files.set('day-sheet.csv', daySheetCsv(file, plan));
    const evening = eveningText(file, plan);
    if (evening !== null) files.set('evening-before.txt', evening);
    files.set('day-sheet.ics', dayCalendar(file, plan, clock.now));
  }
  return files;
}

/** The texts of all that goes out by itself, one after the other; none where there is nothing of the kind. */
function piecesFile(file: EpisodeFile, publish: NumbersToPublish): [string, string][] {
  const pieces = file.publish?.pieces ?? [];
  if (pieces.length === 0) return [];
  const texts = pieces.map((piece) => `${pieceText(publish, piece).text}\n`);
  return [['pieces.txt', texts.join('\n---\n\n')]];
}

/** Of the lock that this run takes; no day's log is in a file. */
function evidenceData(
  file: EpisodeFile,
  figures: EpisodeFigures,
  shopping: ShoppingList,
  { now }: SheetClock,
) {
  const lock = { seq: null, at: now, ...takeLock(file, figures) };
  const facts = editFactsOf(file, { events: [], costs: shopping.dishes });
  return evidence(file, { lock, facts, at: now });
}

/** Figures of the lock where they are its own, else of now, with a lock that this run takes. */
function figuresOf(
  file: EpisodeFile,
  { figures, numbers, ofLock, standing }: NumbersToPublish,
  { now }: SheetClock,
  kept: KeptLock | null,
) {
  if (kept !== null && ofLock) {
    const { snapshot, seq, at, ...lock } = kept;
    const inputsSha256 = readSnapshot(snapshot)?.inputsSha256 ?? null;
    const told = { ...lock, seq, at, inputsSha256, holds: standing === 'locked' };
    return figuresData(file, figures, numbers, told);
  }
  const { snapshot: _, ...lock } = takeLock(file, figures);
  return figuresData(file, figures, numbers, { ...lock, at: now });
}

function figuresData(
  file: EpisodeFile,
  figures: EpisodeFigures,
  numbers: PublishedNumbers,
  lock: Readonly<Record<string, unknown>>,
) {
  const withPrint = (of: Figures | null, scope: NumberScope) =>
    of === null
      ? null
      : Object.fromEntries(
          Object.values(of).map((figure) => {
            const { text: published, said } = numbers(figure.nutrient, scope);
            const { text: shown, unit } = printFigure(figure);
            return [
              figure.nutrient,
              { ...told(figure), shown, published, unit, ...(said === null ? {} : { said }) },
            ];
          }),
        );
  return {
    format: 'scale-and-slate/figures',
    version: 1,
    episode: file.episode.title,
    region: figures.region,
    lock,
    dayIsWhole: figures.dayIsWhole,
    day: withPrint(figures.day, { kind: 'day' }),
    dishes: figures.dishes.map((dish) => ({
      segmentId: dish.segmentId,
      title: dish.title,
      finishedMg: dish.finishedMg,
      whole: withPrint(dish.whole, { kind: 'whole', segmentId: dish.segmentId }),
      per100g: withPrint(dish.per100g, { kind: 'per100g', segmentId: dish.segmentId }),
      portions: dish.portions.map((portion) => ({
        portionId: portion.portionId,
        name: portion.name,
        figures: withPrint(portion.figures, { kind: 'portion', portionId: portion.portionId }),
      })),
      breakdown: dish.lines.map((line) => ({
        ...line,
        figures: Object.fromEntries(
          Object.values(line.figures).map((figure) => [figure.nutrient, told(figure)]),
        ),
      })),
    })),
  };
}

/**
 * A figure as data, which says itself whether it is whole. The sum of what is known of an open figure is no number of
 * it: whoever reads the file must not take it for one.
 */
function told(figure: Figure) {
  const status = figureStatus(figure);
  return { ...figure, status, value: status === 'open' ? null : figure.value };
}
