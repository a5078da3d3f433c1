import 'server-only'
import { env } from '@/lib/env'

const thisMachine: readonly string[] = ['127.0.0.1', 'localhost', '[::1]']

/** The address that people and QR codes use: the shop's own where it is set, else the one the server answers on. */
export function shopAddress(): string {
  const { BRASSTAG_URL, NEXTAUTH_URL } = env()
  return (BRASSTAG_URL ?? NEXTAUTH_URL ?? 'http://127.0.0.1:3000').replace(/\/+$/, '')
}

/** The host, while no other device can open the address; '' otherwise. */
export function localHostName(): string {
  const { hostname } = new URL(shopAddress())
  return thisMachine.includes(hostname) ? hostname : ''
}
