/** What can be wrong with the machine, the disk or the database under the shop's data, in one closed list. */
export const faultCodes = [
  'disk-full',
  'read-only',
  'damaged', // what is on the disk is not what was written
  'disk-error',
  'busy', // something else holds the data, or too many ask at once
  'no-handles', // the machine lets this process open no more files
  'cannot-open',
  'no-memory',
  'away', // the database does not answer, or stopped answering: what was under way may be done
  'met', // two changes ran into each other; trying again helps
  'taken', // a row with this key is there already
] as const

export type FaultCode = (typeof faultCodes)[number]

/** A fault of the machine: reading or writing at all is in question. The other two are between two changes. */
export type MachineFault = Exclude<FaultCode, 'met' | 'taken'>

/**
 * Whether reading or writing at all is in question, and not only one change against another. By definition.
 *
 * Example: `isMachineFault('met')` → false.
 */
export const isMachineFault = (code: FaultCode): code is MachineFault => code !== 'met' && code !== 'taken'
