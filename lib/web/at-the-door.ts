import { isText } from '@/lib/core/plain-text'
import { plainPage, plainRefusal } from './plain-page'
import { isForeign } from './same-origin'

type Asked = Pick<Request, 'method' | 'headers'> & {
  readonly nextUrl: Pick<URL, 'pathname' | 'searchParams'>
}

const read = ['GET', 'HEAD', 'OPTIONS']

/** No page's form is larger; what may be larger says so below. */
const mostBytes = 1_000_000
/** Pictures are counted by their routes, with their own words; these are the ends of what a route reads at all. */
const larger: readonly (readonly [RegExp, number])[] = [
  [/^\/api\/(photos|logo)$/, 16_000_000],
  [/^\/api\/operations$/, 2_000_000],
]

/**
 * What no page, action or route of the app is asked for: an address that is no text, a change from somewhere else, more
 * than anybody sends. Null: it may come in, and is authorised where it leads.
 */
export function refusedAtDoor(asked: Asked): Response | null {
  const { pathname, searchParams } = asked.nextUrl
  const say = pathname.startsWith('/api/') ? asAnswer : asPage
  if (!isReadable(pathname, searchParams)) return say(refusals.address)
  if (read.includes(asked.method)) return null
  if (asked.method !== 'POST') return say(refusals.method)
  if (isForeign(asked)) return say(refusals.origin)
  if (!isAction(pathname, asked.headers)) return say(refusals.method)
  const most = larger.find(([path]) => path.test(pathname))?.[1] ?? mostBytes
  return Number(asked.headers.get('content-length') ?? 0) > most ? say(refusals.size) : null
}

/** A page is posted to by its actions alone, each named by the framework's own id; the routes ask for themselves. */
const isAction = (pathname: string, headers: Pick<Headers, 'get'>): boolean =>
  pathname.startsWith('/api/') || /^[0-9a-f]{40,44}$/.test(headers.get('next-action') ?? '')

type Refused = {
  readonly status: number
  readonly code: 'invalid' | 'not-allowed' | 'too-large'
  readonly title: string
  readonly advice: string
}

const refusals = {
  address: {
    ...{ status: 400, code: 'invalid', title: 'This address cannot be read' },
    advice: 'Check it, or scan the code again.',
  },
  method: {
    status: 405,
    code: 'invalid',
    title: 'This is not done here',
    advice: 'Open the page and use its buttons.',
  },
  origin: {
    ...{ status: 403, code: 'not-allowed', title: 'This was not sent from a page of Brasstag' },
    advice: 'Open the page again and send it from there.',
  },
  size: { status: 413, code: 'too-large', title: 'This is too much at once', advice: 'Send less.' },
} as const satisfies Record<string, Refused>

const asPage = (refused: Refused): Response => plainPage(refused)
const asAnswer = ({ status, code, title, advice }: Refused): Response =>
  plainRefusal(status, code, `${title}. ${advice}`)

function isReadable(pathname: string, query: URLSearchParams): boolean {
  try {
    return isText(decodeURIComponent(pathname)) && [...query].every(([name, value]) => isText(name) && isText(value))
  } catch {
    return false // a % with no two digits after it, or bytes that are no UTF-8
  }
}
