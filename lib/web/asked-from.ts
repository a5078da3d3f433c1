import { headers } from 'next/headers'
import { askingAddress } from '@/lib/core/access/address'
import { env } from '@/lib/env'
import { peerHeader } from './peer-address'
import { requestIdHeader } from './request-id'

/** The address that asks, which no header can fake: see `peer-address.ts`. Proxies are those that BRASSTAG_PROXIES names. */
export function addressIn(given: Pick<Headers, 'get'>): string {
  const proxies = (env().BRASSTAG_PROXIES ?? '').split(/[\s,]+/).filter(Boolean)
  return askingAddress(given.get(peerHeader) ?? '', given.get('x-forwarded-for') ?? '', proxies)
}

export const askedFrom = async (): Promise<string> => addressIn(await headers())

/** For a line of the log: which request, and the address that asks. */
export async function whereFrom(): Promise<{ readonly request: string | null; readonly address: string }> {
  const asked = await headers()
  return { request: asked.get(requestIdHeader), address: addressIn(asked) }
}

/** What the browser says it is, as it came. */
export const browserHeader = async (): Promise<string> => (await headers()).get('user-agent') ?? ''
