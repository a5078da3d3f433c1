import { newId } from './new-id'

const channelName = 'brasstag drafts'
const tabKey = 'brasstag tab'
/** How long another tab has to say that it is there, in milliseconds. One that sleeps answers as soon. */
const answerMs = 150

type Said =
  | { readonly ask: 'who is here'; readonly from: string }
  | { readonly here: string; readonly from: string; readonly to: string }

const isSaid = (data: unknown): data is Said => typeof data === 'object' && data !== null && 'from' in data

export type OpenTabs = {
  /** This tab's own name: the same after a reload, another one in a copy of the tab. */
  readonly tab: string
  /** What forms of other tabs hold now. */
  readonly held: ReadonlySet<string>
  /** This page leaves. */
  readonly close: () => void
}

/** Says to the other tabs of this browser what this one holds, and asks what they do. `holds`: a draft's key for a tab. */
export async function openTabs(holds: (tab: string) => string): Promise<OpenTabs> {
  const page = newId()
  let tab = storedTab() ?? newTab()
  if (typeof BroadcastChannel === 'undefined') return { tab, held: new Set(), close: () => {} }
  const channel = new BroadcastChannel(channelName)
  const held = new Set<string>()
  channel.onmessage = ({ data }: MessageEvent<unknown>) => {
    if (!isSaid(data) || data.from === page) return
    if ('ask' in data) channel.postMessage({ here: holds(tab), from: page, to: data.from } satisfies Said)
    else if (data.to === page) held.add(data.here)
  }
  channel.postMessage({ ask: 'who is here', from: page } satisfies Said)
  await new Promise((resolve) => setTimeout(resolve, answerMs))
  // A copied tab brings the name of the one it was copied from.
  if (held.has(holds(tab))) tab = newTab()
  return { tab, held, close: () => channel.close() }
}

function storedTab(): string | null {
  try {
    return sessionStorage.getItem(tabKey)
  } catch {
    return null // forbidden by the browser: a name for this page alone
  }
}

function newTab(): string {
  const tab = newId()
  try {
    sessionStorage.setItem(tabKey, tab)
  } catch {
    // A reload is another tab then: its draft is offered.
  }
  return tab
}
