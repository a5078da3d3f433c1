import 'fake-indexeddb/auto'
import { randomUUID } from 'node:crypto'
import { Outbox } from '@/app/_components/outbox/outbox'
import type { PostAnswer } from '@/app/_components/outbox/sender'
import { openStore } from '@/app/_components/outbox/store'
import type { KeptDeed } from '@/app/_components/outbox/kept'
import type { OperationAnswer } from '@/lib/schemas/operation-answer'

type Who = { readonly personId: string; readonly cookie: string }

/** The outbox of a tablet without its browser: kept, sent and answered as there. `acknowledged`: what the server said is done. */
export function tabletOutbox(server: string, { personId, cookie }: Who) {
  const acknowledged = new Set<string>()
  const post = async (deeds: readonly KeptDeed[]): Promise<PostAnswer> => {
    const response = await fetch(`${server}/api/operations`, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', Cookie: cookie, Origin: server },
      body: JSON.stringify({
        sentAt: new Date().toISOString(),
        operations: deeds.map(({ id, kind, version, personId: by, takenAt, input }) => ({
          ...{ id, kind, version, personId: by, takenAt, input },
        })),
      }),
    }).catch(() => null)
    if (!response?.ok) return { kind: 'later' }
    const { answers } = (await response.json()) as { answers: OperationAnswer[] }
    for (const { id, state } of answers) if (state === 'done') acknowledged.add(id)
    return { kind: 'answered', answers }
  }
  const outbox = new Outbox(personId, () => openStore(`tablet-${randomUUID()}`), post)
  const report = (visitId: string, what: string) =>
    outbox.add({
      id: randomUUID(),
      kind: 'finding',
      version: 1,
      personId,
      takenAt: new Date().toISOString(),
      words: what,
      input: { visitId, stepId: null, what },
    })
  return { outbox, report, acknowledged }
}
