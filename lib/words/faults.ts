import type { Refusal } from '../core/errors'
import type { FaultCode, MachineFault } from '../core/faults'

/** What is wrong under the shop's data, and what to do about it, for the person at the screen. */
const sentences: Readonly<Record<MachineFault, string>> = {
  'disk-full':
    'The disk of the shop’s computer is full, so nothing can be saved. What was saved before is safe. Make room on the disk, then try again.',
  'read-only':
    'The shop’s data can be read but not written, so nothing can be saved. Tell the owner: the folder or the disk of the data is write protected.',
  damaged:
    'A part of the shop’s data on the disk is damaged. Do not go by figures that are missing. Tell the owner: bring back the newest backup.',
  'disk-error':
    'The disk of the shop’s computer reports an error, so this was not saved. Tell the owner: make a backup on another disk now.',
  busy: 'Something else is using the shop’s data, or too many ask at once. Nothing was changed. Try again in a moment.',
  'no-handles':
    'The shop’s computer cannot open any more files, so this was not done. Try again in a moment. If it happens again, restart Brasstag.',
  'cannot-open': 'The shop’s data cannot be opened on its disk. Tell the owner: look whether the disk is there.',
  'no-memory': 'The shop’s computer is out of memory, so this was not done. Try again in a moment.',
  away: 'The shop’s database does not answer. Try again in a minute. What went through already is not done twice.',
}

export const faultSentence = (code: MachineFault): string => sentences[code]

/** What a person is told of a fault. Two changes that met are told as what they are: somebody else was first. */
export function faultRefusal(code: FaultCode): Refusal {
  if (code === 'taken') {
    return {
      code: 'conflict',
      message:
        'Somebody else saved the same thing at this moment. Nothing was changed here. Look at what it says now, then decide.',
    }
  }
  if (code === 'met') {
    return {
      code: 'unavailable',
      message: 'Others were saving at the same moment. Nothing was changed here. Try again.',
    }
  }
  return { code: 'unavailable', message: sentences[code] }
}
