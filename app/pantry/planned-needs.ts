import 'server-only';
import { runsOut, type RunsOut } from '#lib/shopping/runs-out';
import { shoppingList } from '#lib/shopping/shopping-list';
import { readShoppingFiles } from '#lib/store/read-shopping';

/** What the filming days from today on need over what is at home, and how many episodes they are of. */
export async function plannedNeeds(
  today: string,
  now: Date,
): Promise<{ readonly planned: number; readonly all: readonly RunsOut[] }> {
  const read = await readShoppingFiles(`span:${today}..9999-12-31`, now.toISOString());
  if (!read || read.files.length === 0) return { planned: 0, all: [] };
  return { planned: read.files.length, all: runsOut(shoppingList(read.files, { today })) };
}
