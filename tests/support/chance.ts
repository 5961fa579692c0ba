import fc from 'fast-check';

/**
 * Where the cases of a law begin: the same in every run, so that a run that fails fails again. `SLATE_TEST_SEED=N`
 * tries others.
 */
const SEED = Number(process.env['SLATE_TEST_SEED'] ?? 20261130);

fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: SEED });
