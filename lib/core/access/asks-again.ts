/** So long after the password was typed it is not asked for again. */
export const askedAgainForMs = 10 * 60 * 1000

/**
 * Deeds that ask for the password again, by the name of their action: whoever finds a browser open must not be able to let
 * people in, give rights, take the shop's records along, or change how mail leaves.
 */
export const asksAgain: ReadonlySet<string> = new Set([
  ...['addPerson', 'changePerson', 'retirePerson', 'makeResetLink', 'clearPin', 'liftWaits', 'clearFactor'],
  ...['startFactor', 'confirmFactor', 'renewCodes', 'dropFactor'],
  ...['makeTabletCode', 'changeMailServer', 'changeSettings', 'blankCustomer'],
  ...['exportCustomers', 'exportBooks', 'takeEverything', 'startBackup'],
])

/** When the password was typed last in a session: at its beginning, or when it was asked for again; null: never. */
export type AskedSession = { readonly kind: string; readonly createdAt: Date; readonly askedAt: Date | null }

/**
 * Whether the password was typed so lately in this session that nothing is asked. A PIN is no password.
 *
 * Range: a clock that was set back does not count. Formula: 0 ≤ now − (askedAt, or createdAt of a password's session) <
 * ten minutes. By definition.
 * Example: signed in by password 9 min ago → true; 10 min ago → false; by PIN a minute ago → false.
 */
export function wasAskedLately({ kind, createdAt, askedAt }: AskedSession, now: Date): boolean {
  const at = askedAt ?? (kind === 'password' ? createdAt : null)
  if (at === null) return false
  const sinceMs = now.getTime() - at.getTime()
  return sinceMs >= 0 && sinceMs < askedAgainForMs
}
