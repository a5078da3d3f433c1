import type { Refusal, Result } from '@/lib/core/errors'
import { LostError } from './call-action'
import { parseJson } from './draft-store'
import type { ActionCall } from './operation-ids'

export type Upload = {
  readonly words: Readonly<Record<string, string | undefined>>
  readonly file: Blob
}

type To = {
  readonly address: string
  /** What the person is told is not lost: "The photo". */
  readonly what: string
  /** How far it is, from 0 to 1. */
  readonly onProgress: (part: number) => void
}

/** Sends a file with its words, as an action sends its input. */
export function sendFile<Value>(
  { address, what, onProgress }: To,
  { op, input: { words, file } }: ActionCall<Upload>,
): Promise<Result<Value>> {
  const form = new FormData()
  form.set('op', op)
  for (const [name, text] of Object.entries(words)) form.set(name, text ?? '')
  form.set('file', file, 'picture')
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest()
    request.upload.onprogress = ({ loaded, total }) => onProgress(total > 0 ? loaded / total : 0)
    request.onerror = () => reject(new LostError(`Not sent: no connection. ${what} is still here.`))
    request.ontimeout = request.onerror
    request.onload = () => {
      const result = resultIn<Value>(request.responseText)
      if (result) resolve(result)
      else reject(new LostError(`Not saved: the server did not answer. ${what} is still here. Try again in a moment.`))
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
