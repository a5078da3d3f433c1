/**
 * What does not go along: it signs somebody in, or is of no use outside this program. Whoever holds the export of a shop must
 * not be able to sign in to it.
 */
const tables: readonly string[] = [
  ...['Session', 'TabletCode', 'PinTries', 'SignInTries', 'KnownDevice', 'ResetLink', 'RecoveryCode', 'Operation'],
  ...['OutboxMail', 'CustomerText', 'HeadText'],
]

const columns: Readonly<Record<string, readonly string[]>> = {
  Person: ['passwordHash', 'pinHash', 'factorKey', 'factorDraft', 'factorStep'],
  Tablet: ['tokenHash'],
  CustomerLink: ['tokenHash'],
  MailServer: ['sealedPassword'],
}

export const goesAlong = (table: string, column?: string): boolean =>
  !tables.includes(table) && (column === undefined || !(columns[table] ?? []).includes(column))
