import { isSecureAddress } from './secure-address'

/** The session's cookie: over HTTPS the host's own, which no neighbour can set and no plain connection carries. */
export const sessionCookieName = (): string => (isSecureAddress() ? '__Host-brasstag-session' : 'brasstag-session')

export const sessionCookie = () => ({
  name: sessionCookieName(),
  options: { httpOnly: true, sameSite: 'lax', path: '/', secure: isSecureAddress() } as const,
})
