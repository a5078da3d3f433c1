type Said = { readonly status: number; readonly title: string; readonly advice: string }

const guarded = {
  'Content-Security-Policy': "default-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  'Cache-Control': 'no-store',
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
  'X-Robots-Tag': 'noindex, nofollow',
}

/** A whole page in words, for what is refused before a page begins: nothing of the app is loaded for it. */
export function plainPage({ status, title, advice }: Said, more: Record<string, string> = {}): Response {
  const text = `<!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width">
<title>${title}</title><h1>${title}</h1><p>${advice}</p></html>`
  const headers = { ...guarded, 'Content-Type': 'text/html; charset=utf-8', ...more }
  return new Response(text, { status, headers })
}

/** The same for a program that reads the answer. */
export const plainRefusal = (status: number, code: string, message: string): Response =>
  Response.json({ refusal: { code, message } }, { status, headers: guarded })

/** For whoever asked for pages too often. */
export const tooManyPage = (retryAfterS: number): Response =>
  plainPage(
    { status: 429, title: 'Too many requests', advice: 'Wait a minute, then reload this page.' },
    { 'Retry-After': String(retryAfterS) },
  )
