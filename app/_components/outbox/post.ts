import type { Refusal } from '@/lib/core/errors'
import type { SentOperation } from '@/lib/schemas/operation'
import type { OperationAnswer } from '@/lib/schemas/operation-answer'
import type { PostAnswer } from './sender'

const patienceMs = 20_000

/** Sends a batch of deeds and says what became of it, whatever the network does. */
export async function postOperations(operations: readonly SentOperation[]): Promise<PostAnswer> {
  try {
    const response = await fetch('/api/operations', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ sentAt: new Date().toISOString(), operations }),
      signal: AbortSignal.timeout(patienceMs),
    })
    return await read(response)
  } catch {
    return { kind: 'later' }
  }
}

async function read(response: Response): Promise<PostAnswer> {
  if (response.status === 401) return { kind: 'signed-out' }
  if (response.ok) {
    const { answers, newest } = (await response.json()) as { answers: OperationAnswer[]; newest: number }
    return { kind: 'answered', answers, newest }
  }
  if (response.status !== 422) return { kind: 'later' }
  const { refusal } = (await response.json()) as { refusal: Refusal }
  return { kind: 'unread', refusal }
}
