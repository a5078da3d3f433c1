import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { formDraft, type FormDraft } from '@/app/_components/form/draft-shapes'
import { clearDraft, draftKeys, forgetAll, loadDraft, moveDraft, saveDraft } from '@/app/_components/form/draft-store'

const kept = new Map<string, string>()
const storage: Pick<Storage, 'getItem' | 'setItem' | 'removeItem'> = {
  getItem: (key) => kept.get(key) ?? null,
  setItem: (key, text) => void kept.set(key, text),
  removeItem: (key) => void kept.delete(key),
}
const draft = (name: string): FormDraft => ({ shape: 1, values: { name } })

beforeEach(() => {
  kept.clear()
  // The browser lists what it keeps by the names of the object's own properties.
  vi.stubGlobal(
    'localStorage',
    new Proxy(storage, {
      ownKeys: () => [...kept.keys()],
      getOwnPropertyDescriptor: () => ({ enumerable: true, configurable: true }),
    }),
  )
})
afterEach(() => vi.unstubAllGlobals())

it('a draft comes back under its key until it is cleared', async () => {
  saveDraft('a', draft('Ada'))
  saveDraft('b', draft('Bo'))
  expect(await loadDraft('a', formDraft)).toEqual(draft('Ada'))
  clearDraft('a')
  expect(await loadDraft('a', formDraft)).toBeNull()
  expect(await loadDraft('b', formDraft)).toEqual(draft('Bo'))
})

it('what one person typed is gone when they sign out; what is not of the app stays', async () => {
  saveDraft('a', draft('Ada'))
  saveDraft('step 1', draft('Bo'))
  kept.set('of another app', 'stays')
  forgetAll()
  expect([...kept.keys()]).toEqual(['of another app'])
})

it('is none when it is broken, or of another shape', async () => {
  saveDraft('a', draft('Ada'))
  const [key = ''] = kept.keys()
  for (const text of ['{', '7', JSON.stringify({ shape: 2, values: {} }), JSON.stringify({ shape: 1, values: 7 })]) {
    kept.set(key, text)
    expect(await loadDraft('a', formDraft), text).toBeNull()
  }
})

it('a browser that keeps nothing does not stop the work', async () => {
  vi.stubGlobal('localStorage', undefined)
  expect(() => saveDraft('a', draft('Ada'))).not.toThrow()
  expect(() => forgetAll()).not.toThrow()
  expect(await loadDraft('a', formDraft)).toBeNull()
})

it('lists one person’s keys by how they begin, and moves one', async () => {
  saveDraft('tab-draft book 1', draft('Ada'))
  saveDraft('tab-draft book 2', draft('Bo'))
  saveDraft('tab-draft casting 3', draft('Cy'))
  kept.set('brasstag someone-else tab-draft book 4', '{}')
  expect(draftKeys('tab-draft book ').sort()).toEqual(['tab-draft book 1', 'tab-draft book 2'])
  moveDraft('tab-draft book 1', 'tab-draft book 2')
  expect(draftKeys('tab-draft book ')).toEqual(['tab-draft book 2'])
  expect(await loadDraft('tab-draft book 2', formDraft)).toEqual(draft('Ada'))
  moveDraft('of nobody', 'tab-draft book 2')
  expect(await loadDraft('tab-draft book 2', formDraft)).toEqual(draft('Ada'))
})
