import { env } from '@/lib/env'

/** Whether people reach the app over HTTPS: then cookies are the host's own (`__Host-`), and browsers stay with HTTPS. */
export const isSecureAddress = (): boolean => env().NEXTAUTH_URL?.startsWith('https://') ?? false
