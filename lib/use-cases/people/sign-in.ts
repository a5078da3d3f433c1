import { isText } from '@/lib/core/plain-text'
import { db, type Db } from '@/lib/data/db'
import { newBrowserMark } from '@/lib/data/device-secrets'
import { knownMark, rememberDevice } from '@/lib/data/known-devices'
import { passwordFits } from '@/lib/data/passwords'
import { personBySignIn } from '@/lib/data/people'
import { takeFactorCode } from '@/lib/data/second-factor'
import { endSession, openSession } from '@/lib/data/sessions'
import { forgetOldTries, takeTry, takeTryBack, type TryCount } from '@/lib/data/sign-in-tries'
import { tabletAt } from '@/lib/data/tablets'

export type SignInTried =
  | { readonly kind: 'in'; readonly personId: string; readonly sessionId: string; readonly mark: string }
  /** `code`: the password was right, and a code of the second factor is asked for. Whose sign-in it was is for the log alone. */
  | { readonly kind: 'wrong' | 'code' | 'wrong-code'; readonly personId?: string }
  | { readonly kind: 'wait'; readonly waitMs: number; readonly personId?: string }

export type SignInAsked = {
  readonly name: string
  readonly password: string
  /** Of the second factor; '': none typed. */
  readonly code: string
  /** What this browser says it is, in a few words, where it asks from, and the mark it was given; null: none. */
  readonly browser: string
  readonly address: string
  readonly mark: string | null
  /** What the device says of being an enrolled tablet, and the session that is open in this browser. */
  readonly tabletToken: string | null
  readonly sessionId: string | null
}

const mostName = 100
const mostPassword = 200

/**
 * Opens a session for whoever types their name and password, and a code where they have a second factor. Each try counts
 * before it is looked at. A person's own browsers are counted by themselves, so that nobody is shut out by strangers.
 */
export async function signIn(asked: SignInAsked, now: Date): Promise<SignInTried> {
  const { password } = asked
  if (asked.name.length > mostName || password.length > mostPassword || !isText(asked.name)) return { kind: 'wrong' }
  const client = await db()
  const name = asked.name.trim().toLowerCase()
  const found = await personBySignIn(name)
  const person = found && !found.retiredAt ? found : null
  const counts = countsOf(name, asked.address, person ? await knownMark(client, person.id, asked.mark) : null)
  const waitMs = await takeTry(client, counts, now)
  const whose = person ? { personId: person.id } : {}
  if (waitMs > 0) return { kind: 'wait', waitMs, ...whose }
  await forgetOldTries(client, now)
  // Looked at for everybody, so that the answer takes as long.
  if (!(await passwordFits(person?.passwordHash ?? null, password)) || !person) {
    return { kind: 'wrong', ...whose }
  }
  await takeTryBack(client, counts)
  const refused = person.factorKey === null ? null : await refusedCode(client, person, asked.code, now)
  return refused ?? open(client, person.id, asked, now)
}

/** A browser that the person has signed in with before is one count; a strange one goes into three. */
function countsOf(name: string, address: string, markHash: string | null): TryCount[] {
  if (markHash !== null) return [{ kind: 'device', name, place: markHash }]
  return [
    { kind: 'here', name, place: address },
    { kind: 'address', name: '', place: address },
    { kind: 'name', name, place: '' },
  ]
}

type Holder = Parameters<typeof takeFactorCode>[1]

/** Null: the code is right. Codes are counted for the person alone: only the right password leads here. */
async function refusedCode(client: Db, person: Holder, code: string, now: Date): Promise<SignInTried | null> {
  if (code.trim() === '') return { kind: 'code' }
  const counts: TryCount[] = [{ kind: 'factor', name: person.id, place: '' }]
  const waitMs = await takeTry(client, counts, now)
  if (waitMs > 0) return { kind: 'wait', waitMs, personId: person.id }
  if (!(await takeFactorCode(client, person, code, now))) return { kind: 'wrong-code', personId: person.id }
  await takeTryBack(client, counts)
  return null
}

/** The session that was open in this browser, whoever's it was, ends with it. */
async function open(client: Db, personId: string, asked: SignInAsked, now: Date): Promise<SignInTried> {
  const { browser, address, sessionId: before } = asked
  const mark =
    asked.mark !== null && asked.mark.length >= 20 && asked.mark.length <= 200 ? asked.mark : newBrowserMark()
  const tablet = await tabletAt(client, asked.tabletToken)
  const sessionId = await openSession(personId, now, tablet, { browser, address })
  await rememberDevice(client, personId, mark, now)
  if (before !== null) await endSession(before, 'signed in again', now)
  return { kind: 'in', personId, sessionId, mark }
}
