import { foldedWords } from '../find/fold'

/** What a column of a list of customers can hold. First and last name make one name; several address columns one address. */
export const importFields = [
  ...(['name', 'firstName', 'lastName', 'phone', 'otherPhone', 'email', 'address', 'note'] as const),
] as const
export type ImportField = (typeof importFields)[number]

/** What lists call them, without accents, capitals, spaces. Common practice. */
const headings: Readonly<Record<ImportField, readonly string[]>> = {
  name: ['name', 'customer', 'customername', 'fullname', 'displayname', 'company', 'companyname', 'client'],
  firstName: ['firstname', 'first', 'forename', 'givenname'],
  lastName: ['lastname', 'last', 'surname', 'familyname'],
  phone: [
    'phone',
    'phonenumber',
    'telephone',
    'tel',
    'mobile',
    'mobilephone',
    'cell',
    'cellphone',
    'phone1',
    'mainphone',
  ],
  otherPhone: ['otherphone', 'phone2', 'secondphone', 'workphone', 'homephone', 'altphone', 'alternatephone'],
  email: ['email', 'mail', 'emailaddress', 'mailaddress'],
  address: [
    ...['address', 'street', 'streetaddress', 'address1', 'address2', 'city', 'town', 'state', 'county', 'region'],
    ...['zip', 'zipcode', 'postcode', 'postalcode', 'country'],
  ],
  note: ['note', 'notes', 'comment', 'comments', 'remark', 'remarks'],
}

/**
 * What each column holds, by its heading; '' for one that is not read. A field that is made of one column is taken once:
 * a second telephone is the other one.
 * Derived: the heading without accents, capitals, spaces and hyphens, looked up in a list.
 * Example: ["Full Name", "Cell", "Fax"] → ["name", "phone", ""].
 */
export function columnsByHeading(heading: readonly string[]): (ImportField | '')[] {
  const taken = new Set<ImportField>()
  return heading.map((text) => {
    const key = foldedWords(text).join('')
    const field = importFields.find((one) => headings[one].includes(key))
    const free = field === 'phone' && taken.has('phone') ? 'otherPhone' : field
    if (free === undefined || (free !== 'address' && taken.has(free))) return ''
    taken.add(free)
    return free
  })
}

export type ImportedContact = {
  readonly name: string
  readonly phone: string
  readonly otherPhone: string
  readonly email: string
  readonly address: string
  readonly note: string
}

/** Our own export puts an apostrophe before what a spreadsheet would take for a formula, such as +44. */
const asTyped = (cell: string): string => cell.trim().replace(/^'(?=[=+\-@])/, '')

/**
 * One line of the table as a contact.
 * Derived: the cells of each field in their order; names parted by a space, addresses by a comma.
 * Example: ["Ada", "Rook", "Quay 1", "Ohio"] with firstName, lastName, address, address → "Ada Rook", "Quay 1, Ohio".
 */
export function contactOfLine(cells: readonly string[], columns: readonly (ImportField | '')[]): ImportedContact {
  const of = (field: ImportField) =>
    cells.flatMap((cell, at) => (columns[at] === field && cell.trim() !== '' ? [asTyped(cell)] : []))
  return {
    name: [...of('name'), ...of('firstName'), ...of('lastName')].join(' '),
    phone: of('phone').join(', '),
    otherPhone: of('otherPhone').join(', '),
    email: of('email').join(' '),
    address: of('address').join(', '),
    note: of('note').join(' '),
  }
}
