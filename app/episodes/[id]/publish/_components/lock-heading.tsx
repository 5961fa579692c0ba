import { FocusHere } from '../../_components/focus-here';
import { LOCK_ID } from '../lock-href';

/** The heading that links to the lock lead to: who comes by one has the focus there, from whatever page. */
export function LockHeading() {
  return (
    <>
      <h2 id={LOCK_ID} tabIndex={-1}>
        Numbers lock
      </h2>
      <FocusHere id={LOCK_ID} of="the lock" />
    </>
  );
}
