import { expect, it } from 'vitest'
import { columnsByHeading, contactOfLine } from '@/lib/core/customers/import-columns'

it('columns are known by their headings, however they are written; each field once, addresses together', () => {
  expect(columnsByHeading(['Full Name', 'CELL', 'Fax', 'e-mail', 'Street', 'City', 'Remarks'])).toEqual([
    'name',
    'phone',
    '',
    'email',
    'address',
    'address',
    'note',
  ])
  expect(columnsByHeading(['First name', 'Surname', 'Phone', 'Mobile', 'Tel'])).toEqual([
    'firstName',
    'lastName',
    'phone',
    'otherPhone',
    '',
  ])
  expect(columnsByHeading(['Name', 'Name', 'Téléphone'])).toEqual(['name', '', 'phone'])
})

it('a line is a contact by its columns; what was made harmless for a spreadsheet is as it was typed', () => {
  expect(
    contactOfLine(['Ada', ' Rook ', 'Quay 1', '', 'Ohio'], ['firstName', 'lastName', 'address', 'address', 'address']),
  ).toEqual({
    ...{ name: 'Ada Rook', phone: '', otherPhone: '', email: '', address: 'Quay 1, Ohio', note: '' },
  })
  expect(contactOfLine(["'+44 20", "'Brien", 'extra'], ['phone', 'name'])).toMatchObject({
    phone: '+44 20',
    name: "'Brien",
  })
})
