import { cookies } from 'next/headers'
import { isSecureAddress } from './secure-address'

const maxAgeS = 400 * 24 * 60 * 60
const cookieName = (): string => (isSecureAddress() ? '__Host-brasstag-browser' : 'brasstag-browser')

/** By what this browser is known again at a sign-in; null: it never was here. It opens nothing. */
export const browserMark = async (): Promise<string | null> => (await cookies()).get(cookieName())?.value ?? null

export async function setBrowserMark(mark: string): Promise<void> {
  const options = { httpOnly: true, sameSite: 'lax', path: '/', maxAge: maxAgeS } as const
  ;(await cookies()).set(cookieName(), mark, { ...options, secure: isSecureAddress() })
}
