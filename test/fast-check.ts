import fc from 'fast-check';

/*
 * Every random test draws from one seed, so that what passes once passes on every machine. RANDOM_SEED draws others: the soak
 * and whoever searches for a hole say it.
 */
fc.configureGlobal({ seed: Number(process.env['RANDOM_SEED'] ?? 20261201) });

export default fc;
