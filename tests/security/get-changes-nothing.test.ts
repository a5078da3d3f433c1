import { readdirSync, readFileSync } from 'node:fs'
import { expect, it } from 'vitest'

/** Use cases that read: by the first word of their names. A new word is looked at before it is put here. */
const reads =
  /^(?:see|find|print|spec|newest|shop(?:Locale)?|head(?:Of|At)|preview|export|propose|start(?:Booking|Comeback)|answers|health|compare|orGone|needsSetUp|backupHealth|is[A-Z])/

const usedBy = (source: string): string[] =>
  [...source.matchAll(/import \{([^}]*)\} from '@\/lib\/use-cases\/[^']*'/g)].flatMap(([, names = '']) =>
    names
      .split(',')
      .map((name) => name.trim())
      .filter((name) => name !== '' && !name.startsWith('type ')),
  )

/** What is taken out of the shop is put on record, and nothing else is changed by it. */
const onRecord = ['takeEverything']

/** A type is imported and not called. */
const isCalled = (source: string, name: string): boolean => new RegExp(`\\b${name}\\(`).test(source)

it('no page and no route that answers a GET calls a use case that changes something', () => {
  const files = readdirSync('app', { recursive: true, encoding: 'utf8' }).filter((file) =>
    /(^|\/)(page\.tsx|layout\.tsx|route\.ts)$/.test(file),
  )
  const looked = files.map((file) => ({ file, source: readFileSync(`app/${file}`, 'utf8') }))
  const answering = looked.filter(({ file, source }) => !file.endsWith('route.ts') || /\bGET\b/.test(source))
  expect(answering.length).toBeGreaterThan(90)
  const changing = answering.flatMap(({ file, source }) =>
    usedBy(source)
      .filter((name) => isCalled(source, name) && !reads.test(name) && !onRecord.includes(name))
      .map((name) => `${file}: ${name}`),
  )
  expect(changing).toEqual([])
  // The other way round: of the routes that change something none answers a GET.
  const posting = looked.filter(({ source }) => /export const POST|export (?:async )?function POST/.test(source))
  expect(posting.length).toBeGreaterThan(4)
  expect(posting.filter(({ source }) => /\bGET\b/.test(source)).map(({ file }) => file)).toEqual([])
})
