import { AUTHORITY, LET_IN } from '#lib/door/admission';
import { Button } from '../../_ui/button';
import { ErrorList } from '../../_ui/form/error-list';
import { TextField } from '../../_ui/form/field';
import { fieldId, UNTOUCHED, type FormState } from '../../_ui/form/form-state';
import { SlateHead } from '../../_ui/slate-head';
import { CodeFromLink } from './code-from-link';

interface Props {
  /** What came of the last try, as a sentence. */
  readonly words: string | null;
  /** Whether the sentence is about the name. */
  readonly aboutName: boolean;
  readonly typed: { readonly name: string; readonly code: string };
}

const FORM = 'pair';

/** The page a phone sees first: its code and a name. */
export function PairView({ words, aboutName, typed }: Props) {
  const problems =
    words === null ? [] : [{ path: aboutName ? 'name' : 'code', code: 'refused', message: words }];
  const state: FormState = { ...UNTOUCHED, problems, typed };
  return (
    <>
      <SlateHead kind="Phones" title="Let this device in" />
      <form id={FORM} action={LET_IN} method="post" noValidate className="max-w-[32rem] space-y-5">
        <ErrorList form={FORM} state={state} fields={['code', 'name']} />
        <TextField
          form={FORM}
          name="code"
          label="Code"
          hint="Eight characters, from the page Phones on the computer."
          state={state}
          control={{
            autoComplete: 'off',
            autoCapitalize: 'characters',
            spellCheck: false,
            maxLength: 40,
          }}
        />
        <TextField
          form={FORM}
          name="name"
          label="What this device is called"
          hint="So that you know it on the computer, as in: Kitchen phone."
          state={state}
          control={{ autoComplete: 'off', maxLength: 80 }}
        />
        <Button tone="go" size="day">
          Let me in
        </Button>
      </form>
      <CodeFromLink field={fieldId(FORM, 'code')} next={fieldId(FORM, 'name')} />
      <p className="mt-8 max-w-[60ch] text-soft">
        If this phone warned you before this page,{' '}
        <a className="link" href={AUTHORITY} download>
          fetch the certificate
        </a>{' '}
        and trust it once; the page Phones on the computer says how, and shows the fingerprint to
        compare.
      </p>
    </>
  );
}
