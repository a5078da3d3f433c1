import { must, refuse, type Result } from '@/lib/core/errors'
import { columnsByHeading, contactOfLine, type ImportField } from '@/lib/core/customers/import-columns'
import { phoneCountry } from '@/lib/core/shop/country'
import { csvLines } from '@/lib/data/csv-read'
import { KnownContacts, sharingWith } from '@/lib/data/customer-import'
import { contactColumns } from '@/lib/data/customers'
import type { Reader } from '@/lib/data/db'
import { shopOf } from '@/lib/data/shop'
import { wholeContact, type ImportInput, type WholeContact } from '@/lib/schemas/customer'

/** A line that is not taken, by its number in the file, and why. */
export type LeftOut = { readonly line: number; readonly name: string; readonly why: string }

export type ImportPlan = {
  readonly heading: readonly string[]
  readonly columns: readonly (ImportField | '')[]
  readonly take: readonly { readonly line: number; readonly contact: WholeContact }[]
  readonly bad: readonly LeftOut[]
  /** Those who are on record, or higher up in the same list. */
  readonly doubled: readonly LeftOut[]
}

const mostLines = 2000

/** What of a list would be taken, line by line. Asked for the preview, and again when it is taken. */
export async function importPlan(reader: Reader, input: ImportInput): Promise<ImportPlan> {
  const { heading, columns, lines } = must(tableOf(input))
  const country = phoneCountry(await shopOf(reader))
  const read = lines.map(({ line, cells }) => ({ line, ...checked(contactOfLine(cells, columns)) }))
  const good = read.flatMap(({ line, contact }) =>
    contact ? [{ line, contact, columns: contactColumns(contact, country) }] : [],
  )
  const onRecord = new KnownContacts(
    await sharingWith(
      reader,
      good.map((one) => one.columns),
    ),
  )
  const inList = new KnownContacts()
  const doubled: LeftOut[] = []
  const take: { line: number; contact: WholeContact }[] = []
  for (const { line, contact, columns: shared } of good) {
    const here = onRecord.find(shared)
    const above = here ? null : inList.find(shared)
    if (here) doubled.push({ line, name: contact.name, why: `On record as ${here.called}: ${same[here.by]}` })
    else if (above) doubled.push({ line, name: contact.name, why: `Already in ${above.called}: ${same[above.by]}` })
    else {
      inList.add(shared, `line ${line}`)
      take.push({ line, contact })
    }
  }
  const bad = read.flatMap(({ line, name, why }) => (why === '' ? [] : [{ line, name, why }]))
  return { heading, columns, take, bad, doubled }
}

const same = { phone: 'same phone number', email: 'same e-mail address', name: 'same name' } as const

type Table = {
  readonly heading: readonly string[]
  readonly columns: readonly (ImportField | '')[]
  readonly lines: readonly { readonly line: number; readonly cells: readonly string[] }[]
}

function tableOf({ text, columns }: ImportInput): Result<Table> {
  const all = csvLines(text)
  if (all === null) return refuse('unreadable', 'This is not a table: a quoted text does not end. Check the quotes.')
  const [heading, ...lines] = all
  if (!heading || lines.length === 0) {
    return refuse('unreadable', 'There is no line below the headings. The first line names the columns.')
  }
  if (lines.length > mostLines) {
    return refuse('out-of-range', `There are ${lines.length} lines. Import at most ${mostLines} at a time.`)
  }
  const meant = columns ?? columnsByHeading(heading.cells)
  const hasName = meant.some((field) => field === 'name' || field === 'firstName' || field === 'lastName')
  return hasName || columns === null
    ? { ok: true, value: { heading: heading.cells, columns: heading.cells.map((_, at) => meant[at] ?? ''), lines } }
    : refuse('invalid', 'Choose which column holds the name.', { fields: { columns: 'No column holds the name.' } })
}

const fieldWords: Readonly<Record<string, string>> = {
  ...{ name: 'Name', phone: 'Phone', otherPhone: 'Other phone', email: 'E-mail', address: 'Address', note: 'Note' },
}

function checked(typed: ReturnType<typeof contactOfLine>): { contact?: WholeContact; name: string; why: string } {
  const read = wholeContact.safeParse(typed)
  if (read.success) return { contact: read.data, name: typed.name, why: '' }
  const [issue] = read.error.issues
  const field = fieldWords[String(issue?.path[0])] ?? ''
  return { name: typed.name.slice(0, 60), why: `${field}: ${issue?.message ?? 'not readable'}` }
}
