import { describe, expect, it } from 'vitest'
import { refuseForeignOrigin } from '@/lib/web/same-origin'

const sent = (headers: Readonly<Record<string, string>>) => () => refuseForeignOrigin({ headers: new Headers(headers) })

describe('what is sent from a page of the app', () => {
  it.each<Readonly<Record<string, string>>>([
    { host: 'shop.example:3000', origin: 'http://shop.example:3000' },
    // Behind a proxy that ends HTTPS the host is the one it was asked for.
    { host: '127.0.0.1:3000', 'x-forwarded-host': 'shop.example, inner', origin: 'https://shop.example' },
  ])('is taken: %o', (headers) => {
    expect(sent(headers)).not.toThrow()
  })
})

describe('what is sent from elsewhere, or does not say from where', () => {
  it.each<Readonly<Record<string, string>>>([
    { host: 'shop.example', origin: 'https://elsewhere.example' },
    { host: 'shop.example', origin: 'https://shop.example.elsewhere.example' },
    { host: 'shop.example:3000', origin: 'http://shop.example:4000' },
    { host: 'shop.example', 'x-forwarded-host': 'other.example', origin: 'https://shop.example' },
    { host: 'shop.example' },
    { host: 'shop.example', origin: 'null' },
    { host: 'shop.example', origin: 'no address' },
    { origin: 'https://shop.example' },
    {},
  ])('is refused: %o', (headers) => {
    expect(sent(headers)).toThrow(/not sent from a page of Brasstag/)
  })
})
