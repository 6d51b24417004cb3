import fc from 'fast-check'

/** Fixed seed so that every run can be replayed; FC_SEED=random and FC_RUNS=n look further on demand. */
const seed =
  process.env['FC_SEED'] === 'random' ? Date.now() & 0x7fffffff : Number(process.env['FC_SEED'] ?? 20261125)
fc.configureGlobal({ seed, numRuns: Number(process.env['FC_RUNS'] ?? 200) })
