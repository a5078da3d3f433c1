/** The id of a request: in its answer's header, and in every line of the log that is about it. */
export const requestIdHeader = 'x-brasstag-request'

const letters = 'ACDEFGHJKMNPQRTUVWXY34679'

/** Short enough to be said on the telephone, without letters that are taken for others: "K7Q4-MR9T". */
export function newRequestId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(8))
  const said = [...bytes].map((byte) => letters[byte % letters.length]).join('')
  return `${said.slice(0, 4)}-${said.slice(4)}`
}

/** A path without what is secret in it: the token of a link, and all that was asked with it. */
export const pathForLog = (path: string): string =>
  (path.split(/[?#]/)[0] ?? '').replace(/^\/(s|reset)\/[^/]*/, '/$1/…').slice(0, 100)

/** What is opened by a link alone: a customer's page, or one to choose a password. */
export const isLinkPath = (path: string): boolean => /^\/(s|reset)\//.test(path)
