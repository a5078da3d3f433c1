import type { Refusal, Result } from '@/lib/core/errors'
import type { OperationAnswer } from '@/lib/schemas/operation-answer'
import { callAction } from '../form/call-action'
import { sendFile } from '../form/send-file'
import type { KeptDeed } from './kept'
import type { PostAnswer } from './sender'

const patienceMs = 20_000

/** Sends a batch of deeds and says what became of it, whatever the network does. */
export async function postDeeds(deeds: readonly KeptDeed[]): Promise<PostAnswer> {
  const [first] = deeds
  if (first?.kind === 'photo') return postPhoto(first)
  try {
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

/** Refusals of an upload that pass by themselves. */
const passes: readonly Refusal['code'][] = ['failed', 'too-many']

/** A photo goes up under its own id: twice is once. */
async function postPhoto({ id, input, file }: KeptDeed): Promise<PostAnswer> {
  if (!file) return { kind: 'unread', refusal: { code: 'unreadable', message: 'The picture is gone. Take it again.' } }
  const words = Object.fromEntries(Object.entries(input).map(([name, text]) => [name, String(text ?? '')]))
  const to = { address: '/api/photos', what: 'The photo', onProgress: () => {} }
  const answer = await callAction<object, unknown>(
    (call): Promise<Result<unknown>> => sendFile(to, { op: call.op, input: { words, file } }),
    { op: id, input: {} },
  )
  if (answer.kind === 'taken') return { kind: 'answered', answers: [{ id, state: 'done', value: null }] }
  if (answer.kind === 'moved' || answer.kind === 'lost') return { kind: 'later' }
  if (answer.refusal.code === 'not-signed-in') return { kind: 'signed-out' }
  return passes.includes(answer.refusal.code) ? { kind: 'later' } : { kind: 'unread', refusal: answer.refusal }
}
