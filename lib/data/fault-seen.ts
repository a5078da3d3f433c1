import type { MachineFault } from '@/lib/core/faults'
import { log } from './log'

export type SeenFault = { readonly code: MachineFault; readonly at: Date }

// On globalThis, because the server may load this module more than once and the health page asks what an action saw.
const home = globalThis as typeof globalThis & { brasstagFault?: SeenFault | undefined }

const logAgainMs = 60_000
let logged: SeenFault | null = null

/** Kept until something could be written again. One line a minute in the log: a full disk has no room for more. */
export function seeFault(code: MachineFault, at: Date): void {
  home.brasstagFault = { code, at }
  if (logged?.code === code && at.getTime() - logged.at.getTime() < logAgainMs) return
  logged = { code, at }
  log.error({ fault: code }, 'the disk or the database')
}

export const faultSeen = (): SeenFault | null => home.brasstagFault ?? null

/** Something was written. */
export function faultGone(): void {
  home.brasstagFault = undefined
}
