import { createHash } from 'node:crypto'
import { buildId } from '@/lib/data/build-id'
import type { PrintSetting } from '@/lib/pdf/print-setting'

/** A paper that may be read: what it depends on is known, its bytes are made when they are asked for. */
export type Paper = {
  readonly name: string
  /** Strong: the same tag is the same bytes, as long as this process keeps them. */
  readonly etag: string
  readonly bytes: () => Promise<Uint8Array>
}

/** A paper whose bytes are there already: a spec sheet as it was released. */
export type StoredPaper = { readonly name: string; readonly bytes: Uint8Array }

type Made<Data> = {
  readonly kind: string
  readonly name: string
  /** Everything the paper says. */
  readonly data: Data
  readonly setting: PrintSetting
}

/**
 * A paper is what it says, on which size of sheet, by which build: that is its tag. A version number that somebody forgets
 * to raise could not make it stale. Whoever asks was let in, and the data read for them, before this is called.
 */
export function keptPaper<Data>(
  { kind, name, data, setting }: Made<Data>,
  render: (data: Data, setting: PrintSetting) => Promise<Uint8Array>,
): Paper {
  const said = JSON.stringify([buildId(), kind, setting.paper, data])
  const key = createHash('sha256').update(said).digest('base64url')
  return { name, etag: `"${key}"`, bytes: () => kept(key, () => render(data, setting)) }
}

const mostBytes = 32 * 1024 * 1024
const papers = new Map<string, Uint8Array>()
const making = new Map<string, Promise<Uint8Array>>()
let heldBytes = 0

/** Makes each paper once, also when two ask at the same time; forgets those that were not asked for the longest. */
async function kept(key: string, make: () => Promise<Uint8Array>): Promise<Uint8Array> {
  const known = papers.get(key)
  if (known) {
    papers.delete(key)
    papers.set(key, known)
    return known
  }
  const running = making.get(key)
  if (running) return running
  const work = make()
  making.set(key, work)
  try {
    const bytes = await work
    keep(key, bytes)
    return bytes
  } finally {
    making.delete(key)
  }
}

function keep(key: string, bytes: Uint8Array): void {
  papers.set(key, bytes)
  heldBytes += bytes.length
  for (const [oldest, old] of papers) {
    if (heldBytes <= mostBytes) return
    papers.delete(oldest)
    heldBytes -= old.length
  }
}
