import 'server-only'
import { setTimeout as pause } from 'node:timers/promises'
import { isMachineFault } from '@/lib/core/faults'
import { seeFault } from './fault-seen'
import { faultOf } from './faults'

const patienceMs = 150

/**
 * Something that is good to have written and that nobody must wait for, or be turned away for: whoever only reads goes on
 * while the disk is full or another program holds the data. An error that is no such fault is thrown. True: it is written.
 */
export async function bestEffort(work: Promise<unknown>): Promise<boolean> {
  const written = work.then(() => true).catch(falseWhereItCannot)
  return Promise.race([written, pause(patienceMs, false, { ref: false })])
}

function falseWhereItCannot(error: unknown): false {
  const fault = faultOf(error)
  if (fault === null) throw error
  if (isMachineFault(fault)) seeFault(fault, new Date())
  return false
}
