import { CLAIM_WORDS_CAUTION } from '#lib/claims/claim-words/claim-words-caution';
import { FREE_FROM_CAUTION } from '#lib/claims/free-from/free-from-caution';
import type { EditFacts } from '#lib/claims/edit-facts';
import type { Judged, SaidText, StatementPlace, Verdict } from '#lib/claims/judged';
import { readEdit, type EditReading } from '#lib/claims/read-edit';
import { recipesOf, usedFoodIds } from '#lib/episode/context';
import type { EpisodeFile } from '#lib/episode/schema';
import { namedScopes, scopeText } from '#lib/figures/breakdown-scope';
import { sourceWords } from '#lib/figures/breakdown-words';
import { episodeFigures } from '#lib/figures/episode-figures';
import { countedNutrients } from '#lib/figures/shown-nutrients';
import { BASIS_WORDS } from '#lib/foods/label-column';
import type { Nutrient } from '#lib/foods/nutrients';
import { lockDifference, type LockDifference } from '#lib/lock/lock-difference';
import { printRuntime } from '#lib/units/print';
import { evidenceNumbers, type EvidenceNumber } from '#lib/publish/evidence-numbers';

/** The lock that evidence rests on. */
export interface EvidenceLock {
  /** Its number among the episode's locks; null where it was taken for this evidence. */
  readonly seq: number | null;
  /** UTC instant. */
  readonly at: string;
  readonly sha256: string;
  /** Of the inputs alone; null where the lock does not say. */
  readonly inputsSha256: string | null;
  readonly schemaVersion: number;
  readonly engineVersion: string;
  /** Canonical JSON as `takeLock` made it. */
  readonly snapshot: string;
}

export interface EvidenceSource {
  readonly food: string;
  /** Table, release and number, or the label and the day it was read. */
  readonly source: string;
  readonly statedFor: string;
  /** Whose rules of rounding its bounds come from. */
  readonly rule: 'us' | 'eu' | 'asPrinted';
}

/** A statement with what the working says of it. */
export interface EvidenceStatement {
  readonly text: string;
  readonly kind: SaidText['kind'];
  readonly line: number;
  /** "1:58", or where it has no time "description, line 4". */
  readonly place: string;
  readonly startMs: number | null;
  readonly words: string;
  readonly verdict: Verdict;
  readonly why: string;
  readonly difference: string | null;
  readonly sayInstead: string | null;
  readonly remark: Judged['remark'];
  /** The person put the reading right. */
  readonly mended: boolean;
}

/** All that an episode's numbers can be defended by, as data. */
export interface Evidence {
  readonly format: 'scale-and-slate/evidence';
  readonly version: 1;
  /** UTC instant at which it was made. */
  readonly at: string;
  readonly episode: { readonly title: string; readonly by: string; readonly region: 'US' | 'EU' };
  /** Null where nothing was locked: then it is a draft's. */
  readonly lock: (Omit<EvidenceLock, 'snapshot'> & { readonly holds: boolean }) | null;
  /** What changed under the lock; null where nothing did. */
  readonly difference: Omit<LockDifference, 'holds'> | null;
  readonly numbers: readonly EvidenceNumber[];
  readonly sources: readonly EvidenceSource[];
  readonly statements: readonly EvidenceStatement[];
  /** Words that the person said are no statement. */
  readonly putAside: readonly string[];
  readonly remarks: readonly string[];
}

export interface EvidenceOptions {
  readonly lock: EvidenceLock | null;
  readonly facts: EditFacts;
  /** UTC instant. */
  readonly at: string;
}

/** What evidence does not say, wherever it is shown. */
const NO_TRUTH =
  'A breakdown says where a number comes from and how far its sources and scales allow it to lie. It does not say that a number is true.';

/**
 * What an episode's numbers can be defended by: the lock and whether it holds, each number that is published or was
 * stated with its working, the sources, and every statement with its verdict. Same input, same data.
 * @example evidence(file, { lock, facts: NO_FACTS, at: file.savedAt }).numbers[0]?.working
 */
export function evidence(file: EpisodeFile, { lock, facts, at }: EvidenceOptions): Evidence {
  const reading = readEdit(file, facts);
  const stated = statedNutrients(file, reading);
  const nutrients = [...new Set([...countedNutrients(file.episode), ...stated.nutrients])];
  const figures = episodeFigures(file, nutrients);
  const difference = lock && lockDifference(lock.snapshot, file, figures);
  return {
    format: 'scale-and-slate/evidence',
    version: 1,
    at,
    episode: {
      title: file.episode.title,
      by: file.creator.name,
      region: file.episode.region,
    },
    lock: lock && { ...lockParts(lock), holds: difference?.holds === true },
    difference: difference && !difference.holds ? withoutHolds(difference) : null,
    numbers: evidenceNumbers(file, figures, stated.keys),
    sources: sourcesOf(file),
    statements: statementsOf(reading),
    putAside: reading.putAside.map(({ statement }) => statement.words),
    remarks: [
      NO_TRUTH,
      ...(reading.judged.some(({ statement }) => statement.kind === 'claimWord')
        ? [CLAIM_WORDS_CAUTION]
        : []),
      ...(reading.judged.some(({ statement }) => statement.kind === 'freeFrom')
        ? [FREE_FROM_CAUTION]
        : []),
    ],
  };
}

function lockParts({ snapshot: _, ...rest }: EvidenceLock): Omit<EvidenceLock, 'snapshot'> {
  return rest;
}

function withoutHolds({ holds: _, ...rest }: LockDifference): Omit<LockDifference, 'holds'> {
  return rest;
}

/** Numbers that a statement was held against, of amounts that the episode has. */
function statedNutrients(file: EpisodeFile, { judged }: EditReading) {
  const scopes = new Set(namedScopes(file).map(({ scope }) => scopeText(scope)));
  const held = judged.flatMap(({ against }) =>
    against?.kind === 'figure' && scopes.has(scopeText(against.scope)) ? [against] : [],
  );
  return {
    nutrients: held.map(({ nutrient }): Nutrient => nutrient),
    keys: new Set(held.map(({ nutrient, scope }) => `${scopeText(scope)} ${nutrient}`)),
  };
}

function sourcesOf(file: EpisodeFile): EvidenceSource[] {
  const used = usedFoodIds(recipesOf(file));
  return file.foods
    .filter(({ id }) => used.has(id))
    .map(({ name, version }) => ({
      food: name,
      source: sourceWords(version),
      statedFor: BASIS_WORDS[version.basis],
      rule: version.rule,
    }));
}

function statementsOf({ texts, judged }: EditReading): EvidenceStatement[] {
  const names = new Map(texts.map(({ said }) => [said.id, said.name]));
  return judged.map((each) => ({
    text: names.get(each.place.textId) ?? '',
    kind: each.place.kind,
    line: each.place.line,
    place: placeWords(each.place, names.get(each.place.textId) ?? ''),
    startMs: each.place.startMs,
    words: each.statement.words,
    verdict: each.verdict,
    why: each.why,
    difference: each.difference,
    sayInstead: each.sayInstead,
    remark: each.remark,
    mended: each.mendId !== null,
  }));
}

function placeWords({ startMs, kind, line }: StatementPlace, name: string): string {
  if (startMs !== null) return printRuntime(Math.floor(startMs / 1000));
  return kind === 'talkingPoint' ? `talking point, ${name}` : `${kind}, line ${String(line)}`;
}
