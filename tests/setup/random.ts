import fc from 'fast-check'
import { inLongRun } from './long-run'

/**
 * `npm test` draws the same figures each time, so that a red test is the fault of what was changed. The long run draws
 * others each time and prints its seed when it fails; `BRASSTAG_TEST_SEED` sets it by hand.
 */
const given = process.env.BRASSTAG_TEST_SEED
fc.configureGlobal({ seed: given ? Number(given) : inLongRun ? Date.now() : 20_260_801 })
