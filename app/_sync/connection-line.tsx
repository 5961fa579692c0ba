import { connectionWords, lossWords } from './connection-words';
import { useDeviceWord, useReloads } from './use-device';

interface Props {
  readonly waiting: number;
  readonly connected: boolean;
  readonly letIn: boolean;
  readonly lasts: boolean;
}

/** Where the entries are. Framed and hatched while not connected, besides saying so. */
export function ConnectionLine({ waiting, connected, letIn, lasts }: Props) {
  const device = useDeviceWord();
  const reloads = useReloads();
  const loss = lossWords({ lasts });
  return (
    <div
      className={`mb-4 border-l-[6px] px-3 py-2 ${connected ? 'border-edge' : 'hatch border-dashed border-hand'}`}
    >
      <p role="status" className={connected ? '' : 'text-lead font-semibold'}>
        {connectionWords({ waiting, connected, letIn, lasts, reloads, device })}
      </p>
      {loss && <p className="font-semibold text-hand">{loss}</p>}
    </div>
  );
}
