import { expect, it } from 'vitest'
import { followed } from '@/app/_components/shell/followed'

const plain = {
  button: 0,
  metaKey: false,
  ctrlKey: false,
  shiftKey: false,
  altKey: false,
  defaultPrevented: false,
}

const link = (attributes: Readonly<Record<string, string>>) => ({
  target: attributes.target ?? '',
  getAttribute: (name: string) => attributes[name] ?? null,
  hasAttribute: (name: string) => name in attributes,
})

it('a link to a page of ours opens in its place, with what stands behind the address', () => {
  for (const href of ['/counter', '/jobs/26-0010#messages', '/counter?show=due', '/'])
    expect(followed(plain, link({ href })), href).toBe(href)
})

it('what leads elsewhere, to a paper or to a place on this page is the browser’s', () => {
  for (const href of [
    'tel:5550139',
    'mailto:a@example.org',
    'https://example.org/',
    '//example.org',
    '#main',
    '',
    '/api/papers/job-sheet/1',
  ])
    expect(followed(plain, link({ href })), href).toBeNull()
  expect(followed(plain, link({}))).toBeNull()
  expect(followed(plain, link({ href: '/counter', target: '_blank' }))).toBeNull()
  expect(followed(plain, link({ href: '/counter', download: '' }))).toBeNull()
})

it('another window, another button and a click that somebody has taken are left alone', () => {
  for (const other of [
    { button: 1 },
    { metaKey: true },
    { ctrlKey: true },
    { shiftKey: true },
    { altKey: true },
    { defaultPrevented: true },
  ])
    expect(followed({ ...plain, ...other }, link({ href: '/counter' })), JSON.stringify(other)).toBeNull()
})
