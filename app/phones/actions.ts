'use server';

import { revalidatePath } from 'next/cache';
import { failed, ok, type Result } from '#lib/result';
import { sendAway } from '#lib/store/paired-devices';
import { newCode } from '#lib/store/pairing-codes';
import { parseThenAct } from '../_forms/parse-then-act';
import type { FormState } from '../_ui/form/form-state';
import { cameByDoor } from './came-by-door';
import { makeCodeForm, sendAwayForm } from './schema';

/** Who is in decides nothing here: codes and devices are dealt with on the computer itself. */
async function onlyHere(act: () => Promise<Result<string>>): Promise<Result<string>> {
  if (await cameByDoor()) {
    const message = 'This is done on the computer itself, not on a phone.';
    return failed({ path: '', code: 'not-here', message });
  }
  const result = await act();
  revalidatePath('/phones');
  return result;
}

export async function makeCode(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(makeCodeForm, state, form, () =>
    onlyHere(async () => {
      newCode(new Date());
      return ok('A new code was made.');
    }),
  );
}

export async function sendDeviceAway(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(sendAwayForm, state, form, ({ deviceId, rev, name }) =>
    onlyHere(async () => {
      const written = await sendAway({ id: deviceId, rev, name }, new Date());
      return written.ok ? ok(`${name} was sent away.`) : written;
    }),
  );
}
