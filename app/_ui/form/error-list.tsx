import { fieldId, type FormState } from './form-state';

interface Props {
  readonly form: string;
  readonly state: FormState;
  /** Fields of this form; a fault elsewhere is told without a link. */
  readonly fields: readonly string[];
}

/** All faults of a form in one place, said aloud when they appear, each leading to its field. */
export function ErrorList({ form, state, fields }: Props) {
  const { problems, done } = state;
  return (
    <>
      <div role="alert">
        {problems.length > 0 && (
          <div className="mb-4 border-l-[6px] border-hand py-1 pl-3">
            <p className="font-semibold text-hand">
              {problems.length === 1
                ? 'One thing to put right'
                : `${problems.length} things to put right`}
            </p>
            <ul className="mt-1">
              {problems.map((problem) => {
                const field = fields.find(
                  (name) => problem.path === name || problem.path.startsWith(`${name}.`),
                );
                return (
                  <li key={`${problem.path} ${problem.code}`}>
                    {field ? (
                      <a className="link" href={`#${fieldId(form, field)}`}>
                        {problem.message}
                      </a>
                    ) : (
                      problem.message
                    )}
                  </li>
                );
              })}
            </ul>
          </div>
        )}
      </div>
      <p role="status" className={done ? 'mb-3 text-soft' : 'unseen'}>
        {done}
      </p>
    </>
  );
}
