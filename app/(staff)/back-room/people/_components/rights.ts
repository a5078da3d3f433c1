export const roleOptions = [
  {
    value: 'counter',
    label: 'Counter',
    hint: 'books, asks the customer, prints, takes payments, hands over',
  },
  { value: 'machinist', label: 'Machinist', hint: 'ticks steps, enters readings, reports findings' },
  { value: 'owner', label: 'Owner', hint: 'all of that, and the back room, releases and waivers' },
]

export const grantOptions = [
  { value: 'release', label: 'May release heads', hint: 'as the owner’s deputy; every release is logged' },
  {
    value: 'waive',
    label: 'May waive what is missing',
    hint: 'as the owner’s deputy, with a reason that prints',
  },
]

const fieldLabels: Record<string, string> = { name: 'Name', roles: 'Roles', grants: 'Deputy' }
export const labelOf = (path: string): string => fieldLabels[path] ?? path
