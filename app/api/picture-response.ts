import { errorResponse } from '@/lib/web/error-to-response'

const guarded = {
  'Cache-Control': 'no-store',
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Content-Security-Policy': "default-src 'none'; sandbox",
}

export type ServedPicture = {
  readonly type: 'image/jpeg' | 'image/png'
  readonly name: string
  readonly see: () => Promise<Uint8Array<ArrayBuffer>>
}

/** A picture of our own making, as nothing else than a picture. */
export async function pictureResponse({ type, name, see }: ServedPicture): Promise<Response> {
  try {
    const headers = { ...guarded, 'Content-Type': type, 'Content-Disposition': `inline; filename="${name}"` }
    return new Response(await see(), { headers })
  } catch (error) {
    const refused = errorResponse(error)
    for (const [name, value] of Object.entries(guarded)) refused.headers.set(name, value)
    return refused
  }
}
