import { headers } from 'next/headers'
import type { Actor } from '@/lib/core/access/roles'
import type { RefusalCode } from '@/lib/core/errors'
import { addressIn } from './asked-from'
import { log } from './log'
import { pathForLog, requestIdHeader } from './request-id'

/** What somebody was refused who should not have asked: the rest is the shop's ordinary business. */
const noted: readonly RefusalCode[] = ['not-allowed', 'not-signed-in', 'too-large', 'operation-reused']

/** Who was refused what, and from where. Nothing waits for it, and nothing fails with it. */
export function noteRefusal(code: RefusalCode, who: () => Promise<Actor | null>): void {
  if (noted.includes(code)) void note(code, who).catch(() => undefined)
}

async function note(code: RefusalCode, who: () => Promise<Actor | null>): Promise<void> {
  const asked = await headers()
  const actor = await who()
  log.warn(
    {
      ...{ event: 'refused', code, request: asked.get(requestIdHeader), address: addressIn(asked) },
      ...{ path: pathForLog(asked.get('x-here') ?? ''), personId: actor?.personId ?? null },
    },
    'refused',
  )
}
