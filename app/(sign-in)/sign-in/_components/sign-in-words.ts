import { faultCodes, isMachineFault, type MachineFault } from '@/lib/core/faults'
import { faultSentence } from '@/lib/words/faults'
import type { Posted } from './post-sign-in'

export type Problem = Exclude<Posted['kind'], 'in' | 'code'> | 'empty'

/** What the page says of a sign-in that came to nothing; how long to wait is counted down beside it. */
const words: Readonly<Record<Exclude<Problem, MachineFault>, string>> = {
  wrong: 'Wrong name or password.',
  'wrong-code': 'This code is wrong, too old, or was used before. Wait for the next one.',
  wait: 'Too many wrong tries.',
  failed:
    'The server could not check your password. What you typed may be right. Try again; if it happens again, tell the ' +
    'owner to look at the machine that Brasstag runs on.',
  offline: 'No connection to the shop’s server. Try again in a moment.',
  empty: 'Enter your name and password.',
}

/** Whether a word of the answer names a fault of disk or database. */
export const isTrouble = (word: string): word is MachineFault =>
  faultCodes.some((code) => code === word && isMachineFault(code))

/** Disk or database kept the server from looking at the password or the PIN. */
export const troubleWords = (fault: MachineFault): string => `Nobody can sign in just now. ${faultSentence(fault)}`

export const problemWords = (problem: Problem): string => (isTrouble(problem) ? troubleWords(problem) : words[problem])
