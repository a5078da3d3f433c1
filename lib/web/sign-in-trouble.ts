import { isMachineFault } from '@/lib/core/faults'
import { errorForLog } from '@/lib/data/error-for-log'
import { seeFault } from '@/lib/data/fault-seen'
import { faultOf } from '@/lib/data/faults'
import { log } from './log'
import type { SignInReason } from './sign-in-answer'

/** The server's own trouble at a sign-in, as one word of a closed list: nothing else of the error leaves. It is logged here. */
export function signInTrouble(error: unknown): SignInReason {
  const fault = faultOf(error)
  if (fault !== null && isMachineFault(fault)) {
    seeFault(fault, new Date())
    return fault
  }
  log.error({ event: 'sign-in failed', err: errorForLog(error) }, 'sign-in')
  return 'failed'
}
