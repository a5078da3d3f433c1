import type { Refusal, Result } from '@/lib/core/errors'
import type { AddPhotoForm } from '@/lib/schemas/photo'
import type { Answer } from '../form/call-action'
import { parseJson } from '../form/attempt'

export type PhotoWords = Omit<AddPhotoForm, 'sha256'>

/** Sends one photo and tells how far it is, from 0 to 1. An answer is the server's; no answer may be sent again. */
export function sendPhoto(
  op: string,
  words: PhotoWords,
  picture: Blob,
  onProgress: (part: number) => void,
): Promise<Answer<{ readonly photoId: string }>> {
  const form = new FormData()
  form.set('op', op)
  for (const [name, text] of Object.entries(words)) form.set(name, text ?? '')
  form.set('file', picture, 'photo')
  return new Promise((resolve) => {
    const request = new XMLHttpRequest()
    const unanswered = (message: string) => resolve({ answered: false, refusal: { code: 'failed', message } })
    request.upload.onprogress = ({ loaded, total }) => onProgress(total > 0 ? loaded / total : 0)
    request.onerror = () => unanswered('Not sent: no connection. The photo is still here.')
    request.ontimeout = request.onerror
    request.onload = () => {
      const result = resultIn(request.responseText)
      if (result) resolve({ answered: true, result })
      else
        unanswered(
          'Not kept: the server failed to answer. The photo is still here; send it again in a moment.',
        )
    }
    request.open('POST', '/api/photos')
    request.timeout = 120_000
    request.send(form)
  })
}

function resultIn(text: string): Result<{ readonly photoId: string }> | null {
  const value = parseJson(text)
  if (typeof value !== 'object' || value === null || !('ok' in value)) return null
  if (value.ok === true && 'value' in value) return { ok: true, value: value.value as { photoId: string } }
  return 'refusal' in value ? { ok: false, refusal: value.refusal as Refusal } : null
}
