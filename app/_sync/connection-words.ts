export interface Connection {
  /** Entries on this device that the server has not named. */
  readonly waiting: number;
  readonly connected: boolean;
  /** Whether the server takes entries of this device, which must have been let in. */
  readonly letIn: boolean;
  /** Whether what waits outlives the page. */
  readonly lasts: boolean;
  /** Whether the page itself can be loaded again without the server. */
  readonly reloads: boolean;
  readonly device: 'phone' | 'computer';
}

/**
 * Where the entries are, in one or two sentences.
 * `connectionWords({ waiting: 2, connected: false, … })` →
 * `'Not connected: 2 entries wait on this phone. Keep this page open.'`
 */
export function connectionWords({
  waiting,
  connected,
  letIn,
  reloads,
  device,
}: Connection): string {
  const entries = waiting === 1 ? '1 entry waits' : `${waiting} entries wait`;
  const open = reloads ? '' : ' Keep this page open.';
  if (!letIn) {
    const held = waiting === 0 ? '' : ` ${entries} on it.`;
    return `This ${device} is not let in any more: load this page again to let it in.${held}`;
  }
  if (waiting > 0) {
    return `${connected ? 'Sending' : 'Not connected'}: ${entries} on this ${device}.${open}`;
  }
  return connected
    ? 'Connected: every entry has arrived.'
    : `Not connected: what you press waits on this ${device}.${open}`;
}

/** Said while the browser keeps nothing; null where it keeps what waits. */
export function lossWords({ lasts }: Pick<Connection, 'lasts'>): string | null {
  return lasts
    ? null
    : 'This browser keeps nothing for this page, as in a private window: what waits is lost when the page is closed or loaded again.';
}
