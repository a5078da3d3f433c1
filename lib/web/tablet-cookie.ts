import { cookies } from 'next/headers'
import { isSecureAddress as isSecure } from './secure-address'

/** As long as browsers keep one; it begins anew at each sign-in. */
const maxAgeS = 400 * 24 * 60 * 60

/** Over HTTPS the browser itself holds that only this host sets it, and sends it nowhere else. */
const cookieName = (): string => (isSecure() ? '__Host-brasstag-tablet' : 'brasstag-tablet')

/** What this device says it is; null: nothing. */
export const tabletToken = async (): Promise<string | null> => (await cookies()).get(cookieName())?.value ?? null

/** `lax`: a tag's QR code opens a page of ours from the tablet's camera, and the tablet is known there. */
export async function setTabletToken(token: string): Promise<void> {
  const options = { httpOnly: true, sameSite: 'lax', secure: isSecure(), path: '/', maxAge: maxAgeS } as const
  ;(await cookies()).set(cookieName(), token, options)
}
