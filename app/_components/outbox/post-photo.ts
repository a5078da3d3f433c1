import type { Refusal, Result } from '@/lib/core/errors'
import { callAction } from '../form/call-action'
import { sendFile } from '../form/send-file'
import type { KeptDeed } from './kept'
import type { PostAnswer } from './sender'

/** Refusals of an upload that pass by themselves. */
const passes: readonly Refusal['code'][] = ['failed', 'unavailable', 'too-many']

/** A photo goes up under its own id: twice is once. */
export async function postPhoto({ id, input, file }: KeptDeed): Promise<PostAnswer> {
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
