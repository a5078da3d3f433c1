import type { Refusal, Result } from '@/lib/core/errors'
import { parseJson } from './operation-ids'
import type { Answer } from './call-action'

export type Upload = {
  readonly address: string
  readonly op: string
  readonly words: Readonly<Record<string, string | undefined>>
  readonly file: Blob
  /** What the person is told is not lost: "The photo". */
  readonly what: string
  /** How far it is, from 0 to 1. */
  readonly onProgress: (part: number) => void
}

/** Sends a file with its words. An answer is the server's; what has no answer may be sent again. */
export function sendFile<Value>({ address, op, words, file, what, onProgress }: Upload): Promise<Answer<Value>> {
  const form = new FormData()
  form.set('op', op)
  for (const [name, text] of Object.entries(words)) form.set(name, text ?? '')
  form.set('file', file, 'picture')
  return new Promise((resolve) => {
    const request = new XMLHttpRequest()
    const unanswered = (message: string) => resolve({ answered: false, refusal: { code: 'failed', message } })
    request.upload.onprogress = ({ loaded, total }) => onProgress(total > 0 ? loaded / total : 0)
    request.onerror = () => unanswered(`Not sent: no connection. ${what} is still here.`)
    request.ontimeout = request.onerror
    request.onload = () => {
      const result = resultIn<Value>(request.responseText)
      if (result) resolve({ answered: true, result })
      else unanswered(`Not kept: the server failed to answer. ${what} is still here; send it again in a moment.`)
    }
    request.open('POST', address)
    request.timeout = 120_000
    request.send(form)
  })
}

function resultIn<Value>(text: string): Result<Value> | null {
  const value = parseJson(text)
  if (typeof value !== 'object' || value === null || !('ok' in value)) return null
  if (value.ok === true && 'value' in value) return { ok: true, value: value.value as Value }
  return 'refusal' in value ? { ok: false, refusal: value.refusal as Refusal } : null
}
