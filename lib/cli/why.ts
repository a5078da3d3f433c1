import { isMachineFault } from '@/lib/core/faults'
import { faultOf } from '@/lib/data/faults'
import { faultSentence } from '@/lib/words/faults'

/** Why a command did not work: a refusal of ours as it is, a fault of disk or database in words, else where it came from. */
export function whyNot(error: unknown): string {
  if (!(error instanceof Error)) return String(error)
  const isOurs = error.name === 'Error' && !('code' in error)
  if (isOurs) return error.message
  const fault = faultOf(error)
  if (fault !== null && isMachineFault(fault)) return `${faultSentence(fault)} (${error.message})`
  return error.name === 'Error' ? error.message : String(error.stack)
}
