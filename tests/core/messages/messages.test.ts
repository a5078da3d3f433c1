import { describe, expect, it, test } from 'vitest'
import fc from 'fast-check'
import { mailtoHref, smsHref } from '@/lib/core/messages/hrefs'
import { messageKinds } from '@/lib/core/messages/kinds'
import { isMailAddress, oneLine } from '@/lib/core/messages/line'
import { isFinal, mailFaultOf, type MailFault, type TransportError } from '@/lib/core/messages/mail-fault'
import { lacksOf, type MessageFacts } from '@/lib/core/messages/needs'
import { nextTryAt } from '@/lib/core/messages/tries'
import {
  checkWording,
  fillSubject,
  fillWording,
  placeholders,
  placeholdersOf,
  withLink,
} from '@/lib/core/messages/wording'
import { defaultWording, placeholderLabels } from '@/lib/words/messages'

describe('a wording', () => {
  it('fills what is known and leaves out a line that has nothing to say', () => {
    const text = 'Hello {customer},\n\nJob {job}: {heads}.\nDue {promise}.\n\n{link}\n'
    const values = { customer: 'Wren', job: '26-0117', heads: 'T-0412, T-0413', link: '{link}' }
    expect(fillWording(text, values)).toBe('Hello Wren,\n\nJob 26-0117: T-0412, T-0413.\n\n{link}')
    expect(fillWording(text, { ...values, promise: 'Mar 20, 2026' })).toBe(
      'Hello Wren,\n\nJob 26-0117: T-0412, T-0413.\nDue Mar 20, 2026.\n\n{link}',
    )
  })

  it('takes a value as it is: what looks like a placeholder in it stays', () => {
    expect(fillWording('{customer} {job}', { customer: '{job} $& $1', job: '7' })).toBe('{job} $& $1 7')
    expect(withLink('a {link} b', 'https://shop.example/s/$&')).toBe('a https://shop.example/s/$& b')
  })

  it('ends a sentence once', () => {
    const text = 'We found: {finding}. Price: {price}.'
    expect(fillWording(text, { finding: 'Worn guides. Seats too.', price: '$4.00' })).toBe(
      'We found: Worn guides. Seats too. Price: $4.00.',
    )
    expect(fillWording('{finding}.', { finding: 'Cracked!' })).toBe('Cracked!')
  })

  it('never leaves two empty lines together', () => {
    expect(fillWording('a\n\n{promise}\n\nb', {})).toBe('a\n\nb')
  })

  it('keeps a subject on one line, whatever is in it', () => {
    expect(fillSubject('{shop}: {promise} job {job}', { shop: 'Quay\r\nBcc: x@y.example', job: '7' })).toBe(
      'Quay Bcc: x@y.example: job 7',
    )
  })

  it.each([
    ['booked', 'Hello {customer}, {promise}', true],
    ['booked', 'Hello {costumer}', false],
    ['booked', 'You owe {owed}', false],
    ['ready', 'You owe {owed}', true],
    ['question', '{finding} for {price}', true],
    ['ready', '{finding}', false],
    ['booked', 'a lone { brace', false],
    ['booked', 'a lone } brace', false],
    ['booked', '{{customer}}', false],
    ['booked', '{}', false],
  ] as const)('%s: %s is taken: %s', (kind, text, taken) => {
    const checked = checkWording(kind, text)
    expect(checked.ok).toBe(taken)
    if (!checked.ok) expect(checked.refusal.message).toMatch(/\{/)
  })

  it('names what it does not know and what it does', () => {
    const checked = checkWording('booked', 'Hi {nmae}')
    expect(checked.ok ? '' : checked.refusal.message).toMatch(/^This text does not know \{nmae\}\..*\{customer\}/)
  })

  it('comes with the app for every text, with placeholders that it knows', () => {
    for (const kind of messageKinds) {
      for (const text of [defaultWording[kind].subject, defaultWording[kind].body]) {
        expect(checkWording(kind, text)).toEqual({ ok: true, value: true })
      }
      expect(defaultWording[kind].body).toContain('{link}')
    }
    const used = new Set(messageKinds.flatMap((kind) => placeholdersOf[kind]))
    expect([...used].sort()).toEqual([...placeholders].sort())
    expect(Object.keys(placeholderLabels).sort()).toEqual([...placeholders].sort())
  })
})

describe('what a text needs', () => {
  const whole: MessageFacts = {
    hasName: true,
    hasPromise: true,
    readyHeads: 1,
    specSheets: 1,
    finding: { isPriced: true },
  }
  it.each([
    ['booked', { hasPromise: false, readyHeads: 0, specSheets: 0, finding: null }, []],
    ['booked', { hasName: false }, ['name']],
    ['date-changed', { hasPromise: false }, ['promise']],
    ['question', { finding: null }, ['finding']],
    ['question', { finding: { isPriced: false } }, ['price']],
    ['ready', { readyHeads: 0 }, ['ready-head']],
    ['spec-sheet', { specSheets: 0, hasName: false }, ['name', 'spec-sheet']],
    // Handed over: not to fetch any more, and its sheet can still be sent.
    ['spec-sheet', { readyHeads: 0 }, []],
  ] as const)('%s with %o lacks %o', (kind, facts, lacks) => {
    expect(lacksOf(kind, { ...whole, ...facts })).toEqual(lacks)
    expect(lacksOf(kind, whole)).toEqual([])
  })
})

describe('the links to a person’s own programs', () => {
  const nasty = 'Grüße & 50 % off?\nLine two = "quoted" + more #1 ünï 漢字 🙂 {link}'

  it('carry every sign through the parser of addresses', () => {
    const url = new URL(mailtoHref('o’malley+shop@exämple.example', 'Job & heads?', nasty))
    expect(url.protocol).toBe('mailto:')
    expect(decodeURIComponent(url.pathname)).toBe('o’malley+shop@exämple.example')
    expect([...url.searchParams.keys()]).toEqual(['subject', 'body'])
    expect(url.searchParams.get('subject')).toBe('Job & heads?')
    // RFC 6068, section 5: line breaks in the body are %0D%0A.
    expect(url.searchParams.get('body')).toBe(nasty.replace('\n', '\r\n'))
    const sms = new URL(smsHref('(555) 010-4477', nasty))
    expect([sms.protocol, sms.pathname]).toEqual(['sms:', '5550104477'])
    expect(sms.searchParams.get('body')).toBe(nasty)
    expect(new URL(smsHref('+44 20 7946 0018', 'x')).pathname).toBe('+442079460018')
  })

  /** The standard encoder's own way with half a letter. */
  const whole = (text: string): string => Buffer.from(text).toString()

  it('of any text come back as that text, and name nobody else', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), fc.string({ unit: 'binary' }), (subject, body) => {
        const url = new URL(mailtoHref('a@b.example', subject, body))
        expect(url.pathname).toBe('a@b.example')
        expect([...url.searchParams.keys()]).toEqual(['subject', 'body'])
        expect(url.searchParams.get('body')).toBe(whole(body).replaceAll(/\r\n|\r|\n/g, '\r\n'))
        expect(url.searchParams.get('subject')).toBe(whole(subject).replaceAll(/\r\n|\r|\n/g, ' '))
      }),
      { numRuns: 100 },
    )
  })

  it('do not fail on half a letter', () => {
    expect(new URL(smsHref('1', 'a\ud83d')).searchParams.get('body')).toBe('a\ufffd')
  })
})

describe('a line of a mail’s head', () => {
  it('is one line: nothing typed begins a header', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        // By code point, not by the class that the function uses: C0, delete, C1 and the two separators.
        for (const sign of oneLine(text)) {
          const code = sign.codePointAt(0) ?? 0
          expect(code < 32 || (code >= 127 && code < 160) || code === 0x2028 || code === 0x2029).toBe(false)
        }
      }),
      { numRuns: 100 },
    )
    expect(oneLine('Ready\r\nBcc: a@b.example')).toBe('Ready Bcc: a@b.example')
  })

  it.each([
    ['wren@example.com', true],
    ['wren.calloway+heads@mail.example.co.uk', true],
    ['jörg@exämple.example', true],
    ['', false],
    ['wren', false],
    ['wren@example', false],
    ['@example.com', false],
    ['a@b.example, c@d.example', false],
    ['a@b.example;c@d.example', false],
    ['Wren <a@b.example>', false],
    ['a@b.example\nBcc: c@d.example', false],
    ['a@b@c.example', false],
    ['"a b"@c.example', false],
    [`${'a'.repeat(65)}@b.example`, false],
    [`a@${'b'.repeat(250)}.example`, false],
  ])('%j is one mail address: %s', (text, is) => expect(isMailAddress(text)).toBe(is))
})

test('a mail is tried for a day, with growing pauses, and then left', () => {
  const start = new Date('2026-03-02T14:00:00Z')
  let now = start
  let pause = 0
  let tries = 1
  for (let next = nextTryAt(tries, now); next; next = nextTryAt(tries, now)) {
    expect(next.getTime() - now.getTime()).toBeGreaterThan(pause)
    pause = next.getTime() - now.getTime()
    now = next
    tries += 1
  }
  // 1 + 5 + 15 + 60 + 180 + 360 + 720 = 1341 minutes = 22 h 21 min, over eight tries.
  expect(tries).toBe(8)
  expect(now.toISOString()).toBe('2026-03-03T12:21:00.000Z')
})

/** Answers by RFC 5321 section 4.2 and RFC 4954 section 6; codes of connections as Node documents them. */
test.each([
  [{ code: 'EENVELOPE', responseCode: 550, command: 'RCPT TO' }, 'address-refused', true],
  [{ code: 'EMESSAGE', responseCode: 554, command: 'DATA' }, 'mail-refused', true],
  [{ code: 'EENVELOPE', responseCode: 451, command: 'RCPT TO' }, 'try-later', false],
  [{ code: 'EAUTH', responseCode: 535, command: 'AUTH PLAIN' }, 'wrong-password', false],
  [{ code: 'EAUTH', responseCode: 454, command: 'AUTH PLAIN' }, 'try-later', false],
  [{ code: 'EAUTH', message: 'Missing credentials' }, 'wrong-password', false],
  [{ code: 'ESOCKET', message: 'self-signed certificate' }, 'certificate', false],
  [{ code: 'CERT_HAS_EXPIRED' }, 'certificate', false],
  [{ code: 'ETLS', message: 'Error upgrading connection with STARTTLS' }, 'no-encryption', false],
  [{ code: 'ETLS', responseCode: 502, command: 'STARTTLS' }, 'no-encryption', false],
  [{ code: 'ETIMEDOUT', command: 'CONN' }, 'timeout', false],
  [{ code: 'ECONNECTION', command: 'CONN' }, 'no-connection', false],
  [{ code: 'ESOCKET', message: 'connect ECONNREFUSED' }, 'no-connection', false],
  [{ code: 'EDNS' }, 'no-connection', false],
  [{ message: 'no idea' }, 'unknown', false],
] as [TransportError, MailFault, boolean][])('%o is %s', (error, fault, final) => {
  expect(mailFaultOf(error)).toBe(fault)
  expect(isFinal(fault)).toBe(final)
})
