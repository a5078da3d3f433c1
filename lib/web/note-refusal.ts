import { headers } from 'next/headers'
import type { Actor } from '@/lib/core/access/roles'
import type { RefusalCode } from '@/lib/core/errors'
import { whereFrom } from './asked-from'
import { log } from './log'
import { isLinkPath, pathForLog } from './request-id'

/** What somebody was refused who should not have asked: the rest is the shop's ordinary business. */
const noted: readonly RefusalCode[] = ['not-allowed', 'not-signed-in', 'too-large', 'operation-reused']

/** Who was refused what, and from where. Nothing waits for it, and nothing fails with it. */
export function noteRefusal(code: RefusalCode, who: () => Promise<Actor | null>): void {
  // A link that opens nothing is refused as a page that is not there; any other such page is the shop's business too.
  if (noted.includes(code) || code === 'not-found') void note(code, who).catch(() => undefined)
}

async function note(code: RefusalCode, who: () => Promise<Actor | null>): Promise<void> {
  const path = (await headers()).get('x-here') ?? ''
  if (code === 'not-found' && !isLinkPath(path)) return
  const event = code === 'not-found' ? 'dead link' : 'refused'
  const actor = await who()
  const from = { ...(await whereFrom()), path: pathForLog(path), personId: actor?.personId ?? null }
  log.warn({ event, code, ...from }, 'refused')
}
