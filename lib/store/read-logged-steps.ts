import 'server-only';
import { loggedSteps, type LoggedStep } from '#lib/shoot/after-logged';
import { ROW_KINDS } from '#lib/shoot/day-log';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { byIds, ALIVE } from '#lib/store/load';
import { eventFrom } from '#lib/store/read-day-events';

/** Filming days that are looked at, the latest: what is older says little of how one works now. */
const LATEST_DAYS = 40;
const KINDS = [...ROW_KINDS, 'longer'];

/**
 * What steps took on a kitchen's latest filming days, by their logs; the latest day first. Steps that were taken out
 * since still say what they took.
 */
export async function readLoggedSteps(
  kitchenId: string,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<LoggedStep[]> {
  const days = await database().filmingDay.findMany({
    where: { ...ALIVE, creatorId, kitchenId, events: { some: { ...ALIVE, kind: 'done' } } },
    orderBy: [{ date: 'desc' }, { id: 'desc' }],
    take: LATEST_DAYS,
    select: { date: true, events: { where: { ...ALIVE, kind: { in: KINDS } } } },
  });
  const logs = days.map(({ date, events }) => ({ date, events: events.map(eventFrom) }));
  const ids = logs.flatMap(({ events }) =>
    events.flatMap(({ refs }) => ('stepId' in refs ? [String(refs.stepId)] : [])),
  );
  const steps = await byIds([...new Set(ids)], (some) =>
    database().step.findMany({
      where: { creatorId, id: { in: some } },
      select: {
        id: true,
        title: true,
        usualS: true,
        hands: true,
        burners: true,
        racks: true,
        ovenMilliC: true,
      },
    }),
  );
  return logs.flatMap(({ date, events }) => loggedSteps(date, events, steps));
}
