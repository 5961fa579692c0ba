import type { FaultList } from '#lib/planner/face/faults';
import type { GoalTerm } from '#lib/planner/problem';

/** Adds what is wrong with the goals. */
export function faultsOfGoals(faults: FaultList): void {
  for (const goal of faults.problem.goals) {
    const where = `goal "${goal.id}"`;
    if (!(goal.share >= 0 && goal.share < Infinity))
      faults.all.push(`${where}: a share from 0 on, not ${goal.share}`);
    if (goal.kind === 'latest') {
      if (goal.events !== 'all ends') for (const { task } of goal.events) faults.task(where, task);
      if (goal.grid !== undefined) {
        faults.whole(`${where}, step`, goal.grid.step, 1);
        faults.time(`${where}, origin`, goal.grid.origin);
      }
      continue;
    }
    for (const term of goal.terms) addTerm(faults, `${where}, ${term.kind}`, term);
  }
}

function addTerm(faults: FaultList, where: string, term: GoalTerm): void {
  if (term.kind === 'lateness') {
    faults.task(where, term.event.task);
    faults.time(`${where}, due`, term.due);
    faults.whole(`${where}, weight before`, term.early, 0);
    faults.whole(`${where}, weight after`, term.late, 0);
    return;
  }
  faults.whole(`${where}, weight`, term.weight, 0);
  switch (term.kind) {
    case 'completion':
      faults.task(where, term.event.task);
      break;
    case 'span':
      faults.task(where, term.from.task);
      faults.task(where, term.to.task);
      break;
    case 'changeover':
    case 'stateOn':
      faults.stateful(where, term.resource);
      break;
    case 'switches':
      faults.resource(where, term.resource);
      break;
    case 'moved':
      // Tasks of the earlier plan that are no longer there have nothing to keep.
      for (const { id, start } of term.from) faults.time(`${where}, start of "${id}"`, start);
      break;
    case 'leftOut':
      faults.task(where, term.task);
      break;
  }
}
