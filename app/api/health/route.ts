import { can } from '@/lib/core/access/can'
import { backupHealth } from '@/lib/use-cases/backup/see-backups'
import { health } from '@/lib/use-cases/shop/health'
import { currentActor } from '@/lib/web/require-actor'
import { faultSentence } from '@/lib/words/faults'

export const dynamic = 'force-dynamic'

const headers = { 'Cache-Control': 'no-store' }

/** For whoever watches over the server, and for a page that could not be shown: what is wrong, in a word and in words. */
export async function GET() {
  const found = await health(new Date())
  if (found.status === 'ok') return Response.json({ ...found, ...(await ownersDetail()) }, { headers })
  return Response.json({ ...found, message: faultSentence(found.fault) }, { status: 503, headers })
}

/** Nobody but the owner is told how the shop keeps its backups. */
async function ownersDetail(): Promise<object> {
  const actor = await currentActor()
  return actor && can(actor, 'backup.make') ? { backup: backupHealth(actor, new Date()) } : {}
}
