import type { Refusal } from '@/lib/core/errors'
import type { OperationAnswer } from '@/lib/schemas/operation-answer'
import type { KeptDeed } from './kept'
import type { PostAnswer } from './sender'

const patienceMs = 20_000

/** Sends a batch of deeds and says what became of it, whatever the network does. */
export async function postDeeds(deeds: readonly KeptDeed[]): Promise<PostAnswer> {
  const [first] = deeds
  try {
    if (first?.kind === 'photo') return (await import('./post-photo')).postPhoto(first)
    const response = await fetch('/api/operations', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ sentAt: new Date().toISOString(), operations: deeds.map(sentOf) }),
      signal: AbortSignal.timeout(patienceMs),
    })
    return await read(response)
  } catch {
    return { kind: 'later' }
  }
}

const sentOf = ({ id, kind, version, personId, takenAt, input }: KeptDeed) => ({
  id,
  kind,
  version,
  personId,
  takenAt,
  input,
})

async function read(response: Response): Promise<PostAnswer> {
  if (response.status === 401) return { kind: 'signed-out' }
  if (response.ok) {
    const { answers } = (await response.json()) as { answers: OperationAnswer[] }
    return { kind: 'answered', answers }
  }
  if (response.status !== 422) return { kind: 'later' }
  const { refusal } = (await response.json()) as { refusal: Refusal }
  return { kind: 'unread', refusal }
}
