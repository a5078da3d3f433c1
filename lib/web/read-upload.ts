import { RefusedError } from '@/lib/core/errors'
import { readBody } from './read-body'

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
      code: 'too-large',
      message: `This file is larger than ${Math.floor(mostBytes / 1024 / 1024)} MB. ${advice}`,
    })
  const body = await readBody(request, most, tooLarge)
  if (!body) throw notWhole()
  return formOf(body, request.headers.get('content-type') ?? '')
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
