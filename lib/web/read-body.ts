import { RefusedError } from '@/lib/core/errors'

/**
 * What was sent, and no more of it than may come: what says beforehand that it is larger is refused at once, and what turns
 * out larger is not read to its end. Null: nothing was sent.
 */
export async function readBody(
  request: Request,
  mostBytes: number,
  tooLarge: () => RefusedError,
): Promise<Blob | null> {
  if (Number(request.headers.get('content-length') ?? 0) > mostBytes) throw tooLarge()
  const reader = request.body?.getReader()
  if (!reader) return null
  const chunks: Uint8Array<ArrayBuffer>[] = []
  let length = 0
  for (let part = await reader.read(); !part.done; part = await reader.read()) {
    length += part.value.byteLength
    if (length > mostBytes) throw tooLarge()
    chunks.push(part.value)
  }
  return new Blob(chunks)
}

const tooMuch = () => new RefusedError({ code: 'too-large', message: 'Too much at once. Send less.' })
const notOurs = (message: string) => new RefusedError({ code: 'invalid', message })

/** The value of a JSON body; refused when it is too large or no JSON. */
export async function readJson(request: Request, mostBytes: number): Promise<unknown> {
  const body = await readBody(request, mostBytes, tooMuch)
  try {
    return JSON.parse((await body?.text()) ?? '')
  } catch {
    throw notOurs('This did not arrive whole. It is sent again.')
  }
}
