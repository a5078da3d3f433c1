/** A whole page in words, for whoever asked for pages too often: nothing of the app is loaded for it. */
export function tooManyPage(retryAfterS: number): Response {
  const text = `<!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width">
<title>Too many requests</title><h1>Too many requests</h1><p>Wait a minute, then reload this page.</p></html>`
  return new Response(text, {
    status: 429,
    headers: {
      'Content-Type': 'text/html; charset=utf-8',
      'Content-Security-Policy': "default-src 'none'",
      'Cache-Control': 'no-store',
      'Referrer-Policy': 'no-referrer',
      'X-Content-Type-Options': 'nosniff',
      'X-Robots-Tag': 'noindex, nofollow',
      'Retry-After': String(retryAfterS),
    },
  })
}
