import type { Field } from '@/lib/core/access/fields'
import { plainSqlite } from '@/tests/setup/plain-sqlite'

/** Where each guarded field is stored: table → column → field. */
export const guardedColumns: Readonly<Record<string, Readonly<Record<string, Field>>>> = {
  PriceItem: { unitMinor: 'price' },
  PriceLine: { unitMinor: 'price', taxName: 'price', reason: 'price', endReason: 'price' },
  TaxRate: { name: 'price' },
  Finding: { priceMinor: 'price', taxName: 'price' },
  Job: { dueMinor: 'account' },
  Payment: { minor: 'account', how: 'account' },
  PaymentVoid: { reason: 'account' },
  MoneyPaper: { netMinor: 'account', taxMinor: 'account', totalMinor: 'account', reason: 'account' },
  HandOver: { unpaidMinor: 'account', unpaidReason: 'account' },
  CastingVariant: { costMinor: 'supply cost' },
  SupplyLine: { costMinor: 'supply cost' },
  OutsideOrder: { costMinor: 'vendor cost', freightMinor: 'vendor cost' },
  CustomerContact: {
    ...{ otherPhone: 'contact', otherPhoneE164: 'contact', otherPhoneDigits: 'contact' },
    ...{ email: 'contact', address: 'contact', note: 'contact' },
  },
  Message: { toAddress: 'message', subject: 'message', body: 'message' },
  OutboxMail: { sealedLink: 'secret', fault: 'message', answer: 'message' },
  MailServer: { host: 'mail server', user: 'mail server', fromAddress: 'mail server', sealedPassword: 'secret' },
  Person: { signIn: 'sign-in name', passwordHash: 'secret', pinHash: 'secret' },
  KnownDevice: { markHash: 'secret' },
  ResetLink: { tokenHash: 'secret' },
  RecoveryCode: { codeHash: 'secret' },
  Tablet: { tokenHash: 'secret' },
  TabletCode: { codeHash: 'secret' },
  CustomerLink: { tokenHash: 'secret' },
}

/** Named like something guarded, and open to all at work. */
export const openColumns: readonly string[] = [
  // Whom to ring is everybody's business.
  ...['CustomerContact.phone', 'CustomerContact.phoneE164', 'CustomerContact.phoneDigits'],
  // A vendor's and the shop's own.
  ...['Vendor.phone', 'Vendor.email', 'Vendor.address', 'Shop.phone', 'Shop.address'],
  // "us" or "the vendor": who pays, not how much.
  ...['OutsideOrder.redoCost', 'OutsideOrderVisit.redoCost', 'Visit.comebackPays'],
  // Of one's own sessions, on one's own page.
  'Session.address',
  // A yes or no; and by what a deed that is sent twice is known again.
  ...['Job.pricesOnLink', 'Operation.hash'],
]

type Row = Readonly<Record<string, unknown>>
type PlainFile = Parameters<Parameters<typeof plainSqlite>[1]>[0]
const amounts = /minor$/i

/** A column that by its name may be something guarded. */
export const soundsGuarded = /minor$|cost|price|pays|phone|email|address|hash$|sealed|password|^pin[^a-z]|secret/i

export type Mark = { readonly column: string; readonly field: Field; readonly says: string }

/** What the marked shop holds in this column: a number or a text that stands nowhere else in the shop. */
export const marks: readonly Mark[] = Object.entries(guardedColumns).flatMap(([table, columns], tableAt) =>
  Object.entries(columns).flatMap(([column, field], at) =>
    field === 'secret'
      ? []
      : [{ column: `${table}.${column}`, field, says: markFor(table, column, tableAt * 100 + at) }],
  ),
)

function markFor(table: string, column: string, place: number): string {
  return amounts.test(column) ? String(70_010_007 + place * 10) : textMark(table, column)
}

function textMark(table: string, column: string): string {
  return `zq-${table}-${column}`.toLowerCase()
}

/** Secrets stay as they are, or nobody could sign in: each is looked for itself. */
export const secretsOf = (url: string): readonly Mark[] =>
  plainSqlite(url, (file) =>
    Object.entries(guardedColumns).flatMap(([table, columns]) =>
      Object.keys(columns)
        .filter((column) => columns[column] === 'secret')
        .flatMap((column) =>
          (file.prepare(`SELECT DISTINCT "${column}" AS says FROM "${table}"`).all() as Row[])
            .map(({ says }) => String(says ?? ''))
            .filter((says) => says !== '')
            .map((says) => ({ column: `${table}.${column}`, field: 'secret' as const, says })),
        ),
    ),
  )

/** What is said at work and not to a customer: never on a link, whoever's it is. */
const atWork: Readonly<Record<string, readonly string[]>> = {
  Job: ['note', 'partsPlace', 'cancelReason'],
  Head: ['note'],
  CastingRecord: ['note'],
  CallEntry: ['text'],
  Visit: ['rackPlace', 'takenOffWhy'],
  Hold: ['reason', 'decisionNote', 'customerYes'],
  PartsWait: ['what', 'fromWhom'],
  OutsideOrder: ['instructions', 'freight', 'tracking', 'returnTracking'],
  OutsideOrderVisit: ['marksTyped', 'marksRead', 'rejectedWhy'],
  OutsidePromise: ['note'],
  SupplyOrder: ['note', 'endReason'],
  SupplyPromise: ['note'],
  SupplyLine: ['what'],
  Vendor: ['name', 'phone', 'email', 'address'],
  VisitEvent: ['note'],
  HandOver: ['note'],
  PlanVersion: ['reason'],
  Estimate: ['forWhom', 'note'],
  Person: ['name'],
}

/** What of a table the mark goes to, where it is not all of it: what a customer was asked is theirs to read. */
const only: Readonly<Record<string, string>> = { 'Finding.what': '"askedAt" IS NULL' }

/** Marks what a customer's link never shows, beside the guarded fields; of other customers their names and phones too. */
export const markForLink = (url: string, jobId: string): void =>
  plainSqlite(url, (file) => {
    for (const [table, columns] of Object.entries({ ...atWork, Finding: ['what'] })) {
      for (const column of columns) {
        const where = only[`${table}.${column}`] ?? '1 = 1'
        file
          .prepare(`UPDATE "${table}" SET "${column}" = ? WHERE "${column}" <> '' AND ${where}`)
          .run(textMark(table, column))
      }
    }
    const others = `"customerId" <> (SELECT "customerId" FROM "Job" WHERE "id" = ?)`
    for (const column of ['name', 'phone']) {
      file
        .prepare(`UPDATE "CustomerContact" SET "${column}" = ? || "customerId" WHERE ${others}`)
        .run(textMark('CustomerContact', column), jobId)
    }
  })

/**
 * Writes the marks into every row, past the client and its guards. A text that is empty stays so, an amount that is none
 * too: whether there is one is not what is asked.
 */
export const markShop = (url: string, these = marks): void =>
  plainSqlite(url, (file) => {
    dropTriggers(file)
    for (const { column: at, says } of these) {
      const [table = '', column = ''] = at.split('.')
      const where = `WHERE "${column}" IS NOT NULL AND "${column}" <> '' AND "${column}" <> 0`
      if (amounts.test(column)) file.prepare(`UPDATE "${table}" SET "${column}" = ? ${where}`).run(Number(says))
      else file.prepare(`UPDATE "${table}" SET "${column}" = ? || '-' || rowid ${where}`).run(says)
    }
    markAmounts(file, 'Estimate', 'answer', 'id')
    markAmounts(file, 'MoneyPaper', 'facts', 'id')
    markAmounts(file, 'AuditEntry', 'changes', 'seq')
  })

function dropTriggers(file: PlainFile): void {
  for (const { name } of file.prepare(`SELECT name FROM sqlite_master WHERE type = 'trigger'`).all() as Row[]) {
    file.exec(`DROP TRIGGER "${String(name)}"`)
  }
}

/** Every amount in a stored text. */
export const amountInJson = '71717171'

/** The amounts that stand in a stored text, wherever in it. */
function markAmounts(file: PlainFile, table: string, column: string, id: string): void {
  const marked = (key: string, value: unknown): unknown =>
    amounts.test(key) && typeof value === 'number' && value !== 0 ? Number(amountInJson) : value
  const set = file.prepare(`UPDATE "${table}" SET "${column}" = ? WHERE "${id}" = ?`)
  for (const row of file.prepare(`SELECT "${id}" AS id, "${column}" AS said FROM "${table}"`).all() as Row[]) {
    set.run(JSON.stringify(JSON.parse(String(row.said)), marked), row.id)
  }
}

/** What the demo has none of, put in so that there is something to hide. */
export const fillGuarded = (url: string): void =>
  plainSqlite(url, (file) => {
    dropTriggers(file)
    file.exec(`
      UPDATE "CustomerContact" SET "otherPhone" = '555 0199', "otherPhoneE164" = '+15550199', "otherPhoneDigits" = '5550199',
        "address" = 'a street', "note" = 'pays late', "email" = 'a@b.example';
      UPDATE "Finding" SET "priceMinor" = 12300, "taxName" = 'a tax';
      UPDATE "PriceLine" SET "reason" = 'an old friend';
      UPDATE "HandOver" SET "unpaidMinor" = 4500, "unpaidReason" = 'pays on Friday';
      INSERT INTO "MailServer" VALUES (1, 'mail.shop.example', 587, 'starttls', 'desk', 'sealed-password-of-mail',
        'desk@shop.example', 'desk@shop.example', 1);
      INSERT INTO "Message" ("id", "jobId", "kind", "way", "toName", "toAddress", "subject", "body", "at", "byId")
        SELECT 'm' || "id", "id", 'ready', 'mail', 'Somebody', 'a@b.example', 'Ready', 'It is ready.', "createdAt", "byId"
        FROM "Job";
      INSERT INTO "OutboxMail" ("messageId", "state", "mailId", "sealedLink", "nextAt", "fault", "answer")
        SELECT "id", 'failed', "id" || '@shop.example', 'sealed-link-' || "id", "at", 'refused', 'no such box' FROM "Message";
      INSERT INTO "PaymentVoid" SELECT "id", 'typed twice', "at", "byId" FROM "Payment"
        WHERE "id" NOT IN (SELECT "paymentId" FROM "PaymentVoid") LIMIT 1;
    `)
  })
