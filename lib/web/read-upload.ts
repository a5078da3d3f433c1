import { RefusedError } from '@/lib/core/errors'

/** What a form's own words and boundaries may add to its file. */
const roomForWords = 64 * 1024

/**
 * A form with a file. No more is read than may come: what says beforehand that it is larger is refused at once, and what
 * turns out larger is not read to its end. `advice` says what to do about it.
 */
export async function readUpload(request: Request, mostBytes: number, advice: string): Promise<FormData> {
  const most = mostBytes + roomForWords
  const tooLarge = () =>
    new RefusedError({
      code: 'out-of-range',
      message: `This file is larger than ${Math.floor(mostBytes / 1024 / 1024)} MB. ${advice}`,
    })
  if (Number(request.headers.get('content-length') ?? 0) > most) throw tooLarge()
  const reader = request.body?.getReader()
  if (!reader) throw notWhole()
  const chunks: Uint8Array<ArrayBuffer>[] = []
  let length = 0
  for (let part = await reader.read(); !part.done; part = await reader.read()) {
    length += part.value.byteLength
    if (length > most) throw tooLarge()
    chunks.push(part.value)
  }
  return formOf(new Blob(chunks), request.headers.get('content-type') ?? '')
}

async function formOf(body: Blob, type: string): Promise<FormData> {
  try {
    return await new Response(body, { headers: { 'Content-Type': type } }).formData()
  } catch {
    throw notWhole()
  }
}

const notWhole = (): RefusedError =>
  new RefusedError({ code: 'invalid', message: 'The file did not arrive whole. Send it again.' })
