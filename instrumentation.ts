/**
 * Runs once as the server starts: makes the index of the reference foods before somebody types.
 * A database that cannot be read is told by the first page that needs it, not here.
 */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME !== 'nodejs' || process.env.NODE_ENV !== 'production') return;
  const { findFoods } = await import('#lib/store/reference-search');
  findFoods('egg', { take: 1 }).catch(() => undefined);
}
