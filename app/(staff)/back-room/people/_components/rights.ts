import type { Grant, Role } from '@/lib/core/access/roles'

export const roleWords: Record<Role, string> = { counter: 'Counter', machinist: 'Machinist', owner: 'Owner' }
export const grantWords: Record<Grant, string> = { release: 'releases', waive: 'waivers' }

export const roleOptions = [
  {
    value: 'counter',
    label: roleWords.counter,
    hint: 'books jobs, calls customers, prints, takes payments, hands over',
  },
  { value: 'machinist', label: roleWords.machinist, hint: 'ticks steps, enters readings, reports findings' },
  { value: 'owner', label: roleWords.owner, hint: 'all of that, and the back room, releases and waivers' },
]

export const grantOptions = [
  { value: 'release', label: 'May release heads', hint: 'in place of the owner; every release is logged' },
  { value: 'waive', label: 'May waive what is missing', hint: 'in place of the owner; the reason is printed' },
]

const fieldLabels: Record<string, string> = { name: 'Name', roles: 'Roles', grants: 'Deputy for the owner' }
export const labelOf = (path: string): string => fieldLabels[path] ?? path
