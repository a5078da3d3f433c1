import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { openTabs, type OpenTabs } from '@/app/_components/form/open-tabs'

/** What one browser tab keeps for itself; a copy of the tab begins with the same. */
function tabStorage(from: ReadonlyMap<string, string> = new Map()) {
  const kept = new Map(from)
  vi.stubGlobal('sessionStorage', {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, text: string) => void kept.set(key, text),
  })
  return kept
}

const holds = (tab: string) => `book a job ${tab}`
const open: OpenTabs[] = []
async function opened(): Promise<OpenTabs> {
  const tabs = await openTabs(holds)
  open.push(tabs)
  return tabs
}

beforeEach(() => void tabStorage())
afterEach(() => {
  open.splice(0).forEach((tabs) => tabs.close())
  vi.unstubAllGlobals()
})

it('a tab keeps its name through a reload', async () => {
  const before = await opened()
  before.close()
  expect((await opened()).tab).toBe(before.tab)
})

it('two tabs have two names, and the second knows what the first holds', async () => {
  const first = await opened()
  tabStorage()
  const second = await opened()
  expect(second.tab).not.toBe(first.tab)
  expect([...second.held]).toEqual([holds(first.tab)])
})

it('a copied tab takes a name of its own, for good', async () => {
  const kept = tabStorage()
  const first = await opened()
  tabStorage(kept)
  const copy = await opened()
  expect(copy.tab).not.toBe(first.tab)
  copy.close()
  expect((await opened()).tab).toBe(copy.tab)
})

it('what a closed tab held is held by nobody', async () => {
  const first = await opened()
  first.close()
  tabStorage()
  expect([...(await opened()).held]).toEqual([])
})

it('a browser without storage or channel gives each page a name', async () => {
  vi.stubGlobal('sessionStorage', undefined)
  vi.stubGlobal('BroadcastChannel', undefined)
  const [one, other] = [await opened(), await opened()]
  expect(one.tab).not.toBe(other.tab)
  expect([...other.held]).toEqual([])
})
