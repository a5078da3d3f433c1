import type { Posted } from './post-sign-in'

export type Problem = Exclude<Posted['kind'], 'in' | 'code'> | 'empty'

/** What the page says of a sign-in that came to nothing; how long to wait is counted down beside it. */
export const problemWords: Readonly<Record<Problem, string>> = {
  wrong: 'Wrong name or password.',
  'wrong-code': 'This code is wrong, too old, or was used before. Wait for the next one.',
  wait: 'Too many wrong tries.',
  failed:
    'The server could not check your password. What you typed may be right. Try again; if it happens again, tell the ' +
    'owner to look at the machine that Brasstag runs on.',
  offline: 'No connection to the shop’s server. Try again in a moment.',
  empty: 'Enter your name and password.',
}
