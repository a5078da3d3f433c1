export type Made = { readonly ok: true } | { readonly ok: false; readonly why: string }

const noAnswer = 'The shop’s machine does not answer. Try again when the network is back.'
const brokenOff = 'The network went away while the paper was being sent. Try again.'
const noWords = 'The paper could not be made. Try again; if it happens again, tell the owner.'

/** Has the server make a paper and keeps it in the browser, so that opening it takes no time; or says what went wrong. */
export async function makePaper(href: string): Promise<Made> {
  const answer = await fetch(href).catch(() => null)
  if (!answer) return { ok: false, why: noAnswer }
  if (!answer.ok) return { ok: false, why: await wordsOf(answer) }
  const paper = await answer.blob().catch(() => null)
  return paper ? { ok: true } : { ok: false, why: brokenOff }
}

/** The app refuses in plain words; a page of something that stands before it is none. */
async function wordsOf(answer: Response): Promise<string> {
  if (!answer.headers.get('content-type')?.startsWith('text/plain')) return noWords
  return (await answer.text().catch(() => '')) || noWords
}
