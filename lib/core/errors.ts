/**
 * Everything that can be refused, in one closed list. Core functions return a refusal instead of throwing, so that a
 * figure which cannot be had says why; `lib/web/error-to-response.ts` maps the codes to HTTP status and user text.
 */
export const refusalCodes = [
  'missing', // a figure the answer depends on is not known: `needs` names the fields
  'out-of-range', // physically impossible for this quantity
  'ambiguous', // could be read in two ways: the message offers both
  'unreadable', // not a figure
  'contradiction', // two things given that do not agree
  'unreachable', // no cut reaches the target inside the limits
  'measure-again', // the readings are too uncertain to advise a cut
  'unlikely', // possible and not believed: kept when it is typed a second time
  'impossible', // readings that cannot all be true
  'hold', // metal is already gone that should not be: stop and fetch the owner
  'invalid', // a form field is wrong
  'not-signed-in',
  'ask-again', // a deed that asks for the password, typed too long ago
  'not-allowed',
  'not-found',
  'not-on-route', // a step that this head's route does not have, or no longer has
  'conflict', // somebody else changed it first
  'operation-reused', // the same operation id with other content
  'owed', // readings or earlier steps are owed first
  'incomplete', // release refused: the list of what is missing
  'wrong-state', // the thing is not in a state that allows this
  'too-many', // rate limit
  'too-large', // more was sent than is taken at once
  'unavailable', // the disk or the database cannot do it now: the same is sent again later, under its id
  'failed', // unexpected; nothing was changed
] as const

export type RefusalCode = (typeof refusalCodes)[number]

export type TheirVerb = 'tick' | 'undo' | 'read' | 'start' | 'waive' | 'change' | 'plan'

/**
 * `who`: the person's name, '' when nobody is known. `at`: ISO 8601, '' when it is not known. `seen`: of a conflict at a
 * step, the number of the event; who chose in its knowledge has seen it.
 */
export type Theirs = {
  readonly who: string
  readonly verb: TheirVerb
  readonly at: string
  readonly seen?: number
  /** What the page had seen that was refused: what the same person did after it, they were not told of. */
  readonly since?: number
}

export type Refusal = {
  readonly code: RefusalCode
  /** A whole sentence, plain words, for the person at the screen. */
  readonly message: string
  /** Names of the fields that are missing or wrong. */
  readonly needs?: readonly string[]
  /** Field name → what is wrong with it. */
  readonly fields?: Readonly<Record<string, string>>
  /** For a conflict: who was first, what they did and when. */
  readonly theirs?: Theirs
  /** For a conflict over something that is read: what it says now. */
  readonly readsNow?: string
  /** Of what looks like something on record: the ids of what it may be, to be answered one by one. */
  readonly alike?: { readonly customers: readonly string[]; readonly heads: readonly string[] }
  /** Each thing that stands in the way, in words, with the address of the page where it is put right. */
  readonly gaps?: readonly { readonly message: string; readonly href: string }[]
  /** Of too many at once: after so many seconds the next one is taken. */
  readonly retryAfterS?: number
}

export type Result<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly refusal: Refusal }

/** A result that is there. */
export const ok = <T>(value: T): Result<T> => ({ ok: true, value })

/** A refusal as a result. */
export const refuse = (
  code: RefusalCode,
  message: string,
  more?: Omit<Refusal, 'code' | 'message'>,
): { readonly ok: false; readonly refusal: Refusal } => ({
  ok: false,
  refusal: { code, message, ...more },
})

/** Thrown by use cases and data only, caught in one place (`defineAction` and the route handlers). */
export class RefusedError extends Error {
  constructor(readonly refusal: Refusal) {
    super(refusal.message)
    this.name = 'RefusedError'
  }
}

/** The value, or the refusal thrown: for use cases, never inside core. */
export function must<T>(result: Result<T>): T {
  if (!result.ok) throw new RefusedError(result.refusal)
  return result.value
}
