/** The part of tar-stream that is used here. */
declare module 'tar-stream' {
  import type { Readable, Writable } from 'node:stream'

  export type Header = {
    name: string
    size?: number
    mode?: number
    mtime?: Date
    type?: string
    /** Written before the entry; the only place for a size over 8 GiB. */
    pax?: Record<string, string>
  }
  export type Pack = Readable & {
    entry(header: Header, content: Buffer, done: (error?: Error | null) => void): Writable
    entry(header: Header, done: (error?: Error | null) => void): Writable
    finalize(): void
  }
  export type Extract = Writable & {
    on(event: 'entry', take: (header: Header, content: Readable, next: (error?: Error) => void) => void): Extract
  }
  export function pack(): Pack
  export function extract(): Extract
}
