import { readSnapshot } from '#lib/lock/locked-snapshot';
import { evidence, type Evidence } from '#lib/publish/evidence';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readLastLock } from '#lib/store/read-locks';
import { readEditFacts } from '../edit-facts';

/** The evidence of an episode as it stands, with its newest lock. */
export interface ReadEvidence {
  readonly evidence: Evidence;
  readonly zone: string;
}

/** Reads all that an episode's numbers can be defended by; null where there is no such episode. */
export async function readEvidence(episodeId: string): Promise<ReadEvidence | null> {
  const at = new Date().toISOString();
  const file = await readEpisodeFile(episodeId, at, { edit: true });
  if (!file) return null;
  const last = await readLastLock(episodeId);
  const snapshot = last && readSnapshot(last.snapshot);
  const facts = await readEditFacts(file);
  const lock = last && {
    ...{ seq: last.seq, at: last.at.toISOString(), sha256: last.sha256, snapshot: last.snapshot },
    ...{ schemaVersion: last.schemaVersion, engineVersion: last.engineVersion },
    inputsSha256: snapshot?.inputsSha256 ?? null,
  };
  return { evidence: evidence(file, { lock, facts, at }), zone: file.kitchen.zone };
}
