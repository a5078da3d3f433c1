import type { Actor } from '@/lib/core/access/roles'
import { signedInBy } from '@/lib/data/sessions'
import { demoPeople, type DemoSignIn } from '@/lib/demo/people'
import { enrolTablet } from '@/lib/use-cases/tablets/enrol-tablet'
import { makeTabletCode } from '@/lib/use-cases/tablets/make-tablet-code'
import { signInByPin, type PinTried } from '@/lib/use-cases/tablets/sign-in-by-pin'
import { now } from '../people/staff'

export const after = (ms: number): Date => new Date(now.getTime() + ms)

export type Device = { readonly tabletId: string; readonly token: string }

/** A device at the deck mill that has typed the owner's code. */
export async function enrolled(owner: Actor, name = 'Tablet at the mill'): Promise<Device> {
  const { code } = await makeTabletCode(owner, { name, station: 'deck-mill' }, { now })
  return enrolTablet({ code }, { now })
}

export const pinOf = (signIn: DemoSignIn): string => demoPeople.find((one) => one.signIn === signIn)?.pin ?? ''

export const signInAt = (token: string | null, { personId }: Actor, pin: string, at = now): Promise<PinTried> =>
  signInByPin({ personId, pin, token }, at)

/** The session that the right PIN opens. */
export async function sessionAt({ token }: Device, person: Actor, pin: string, at = now): Promise<string> {
  const tried = await signInAt(token, person, pin, at)
  if (tried.kind !== 'in') throw new Error(`Not signed in: ${tried.kind}`)
  return tried.sessionId
}

/** Who a request with this session and this device's cookie is. */
export const whoIs = async (session: string, token: string | null, at = now): Promise<Actor | null> =>
  (await signedInBy(session, token, at))?.actor ?? null
