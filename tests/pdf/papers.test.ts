import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import fontkit from '@pdf-lib/fontkit'
import jsQR from 'jsqr'
import { describe, expect, it } from 'vitest'
import type { SpecSheetData } from '@/lib/core/spec/spec-sheet'
import { estimatePaper } from '@/lib/pdf/estimate'
import { jobSheet } from '@/lib/pdf/job-sheet'
import { outsideSheet } from '@/lib/pdf/outside-sheet'
import { handOverSlip } from '@/lib/pdf/hand-over-slip'
import { specSheet } from '@/lib/pdf/spec-sheet'
import { tagLabel } from '@/lib/pdf/tag-label'
import { busiestPath, drawnLetters, readPdf, type Extent, type Rectangle } from './read-pdf'
import { estimate, handOverSlipOf } from './sample-desk-papers'
import { flow, head, job, jobHead, label, outside, setting, shop, spec } from './sample-papers'

/** Text as it is read off the paper, whatever the line breaks. */
const flat = (text: string) => text.replace(/\s+/g, ' ')

/** Inks the rectangles into a bitmap, so many pixels a millimetre, and has an independent reader decode it. */
function decode(code: readonly Rectangle[], pixelsPerMm = 8): string {
  const edge = Math.max(...code.map((part) => Math.max(part.x + part.width, part.y + part.height)))
  const side = Math.ceil((edge + 4) * pixelsPerMm)
  const pixels = new Uint8ClampedArray(side * side * 4).fill(255)
  for (const part of code) {
    const [x0, x1] = [part.x, part.x + part.width].map((mm) => Math.round(mm * pixelsPerMm))
    const [y0, y1] = [part.y, part.y + part.height].map((mm) => Math.round(mm * pixelsPerMm))
    for (let y = y0 ?? 0; y < (y1 ?? 0); y++) {
      for (let x = x0 ?? 0; x < (x1 ?? 0); x++) pixels.fill(0, (y * side + x) * 4, (y * side + x) * 4 + 3)
    }
  }
  return jsQR(pixels, side, side)?.data ?? 'not decoded'
}

describe('job sheet', () => {
  it('says the order, the plan, the readings owed and what was read already', async () => {
    const { pages, text, title, language, sizes } = await readPdf(await jobSheet(job, setting))
    expect(title).toBe('Job sheet 26-0117')
    expect(language).toBe('en')
    expect(sizes[0]).toEqual([215.9, 279.4])
    for (const words of [
      'T-0412',
      'Tomasz Brandt · 555 0199',
      'Chambers to 60 cc, angle cut allowed, no more than 1°',
      '0.083',
      '60.0',
      'exhaust edge · deep edge · cut 0.083 in',
      'marked end',
      'Measure finished',
      'Finished, cc',
      '64.2',
      'exhaust end',
      'STOP. On hold: The dowel hole on end 2 is torn. Not decided yet: ask the owner.',
      'Waiting for parts',
      'Assembly heights waits for 8 springs',
      'Spring seat 3 is worn',
      'revision 31',
      'front desk',
      'Call before any weld.',
      'check the clearance at assembly',
      'made 3 Mar 2026, 14:05',
    ]) {
      expect(flat(text)).toContain(words)
    }
    expect(pages.map((page) => flat(page).match(/page \d+ of \d+/)?.[0])).toEqual(
      pages.map((_, i) => `page ${i + 1} of ${pages.length}`),
    )
  })

  it.each(['letter', 'a4'] as const)('gives each head one page of its own (%s)', async (paper) => {
    const two = { ...job, heads: [jobHead, { ...jobHead, tag: 'T-0413' }] }
    const { pages } = await readPdf(await jobSheet(two, { ...setting, paper }))
    expect(pages).toHaveLength(2)
    const starts = pages.flatMap((page, i) => (/Job 26-0117/.test(page) ? [i] : []))
    expect(starts).toHaveLength(2)
    expect(pages[starts[1] ?? 0]).toContain('T-0413')
  })

  it('carries a QR code that decodes to the address of the tag', async () => {
    const code = await busiestPath(await jobSheet(job, setting))
    expect(decode(code)).toBe(jobHead.qrText)
  })

  it('prints the order of a job whose heads are not here yet', async () => {
    const { text } = await readPdf(await jobSheet({ ...job, heads: [] }, setting))
    expect(flat(text)).toContain('No head has come in on this job yet.')
    expect(flat(text)).toContain('Tomasz Brandt')
  })

  it('says when its QR code works on this machine only', async () => {
    const warned = { ...job, addressWarning: 'The code opens on this computer only.' }
    expect((await readPdf(await jobSheet(warned, setting))).text).toContain(warned.addressWarning)
  })
})

describe('outside sheet', () => {
  it('says what to cut, by how much, off which edge, what to leave and what is checked', async () => {
    const { text, sizes } = await readPdf(await outsideSheet(outside, { ...setting, paper: 'a4' }))
    expect(sizes[0]).toEqual([210, 297])
    for (const words of [
      'Outside order 26-014',
      'To: Northgate Grinding',
      'Angle cut: 0.063 in at the exhaust edge, running out to nothing at the intake edge',
      'The exhaust edge is the deep edge.',
      'Cut exactly these figures, no more. We take another 0.020 in flat here afterwards.',
      'thickness now, in wanted, in after your cut, in',
      'exhaust end 1 4.5020 4.4388',
      'Each depth within 0.0020 in',
      'exhaust edge · deep edge · cut 0.063 in',
      'Dowels are in',
      'thickness at the four corners',
      'Do not cut deeper than the figure',
      'T-0413',
    ]) {
      expect(flat(text)).toContain(words)
    }
  })
})

describe('spec sheet', () => {
  it('fits a whole job with both ports on two pages: what came of it first, how it was proved second', async () => {
    const { pages, title } = await readPdf(await specSheet(spec, setting))
    expect(title).toBe('Spec sheet T-0412, job 26-0117')
    expect(pages).toHaveLength(2)
    const [first = '', second = ''] = pages.map(flat)
    for (const words of [
      '60.1',
      '11.2',
      '64.7',
      '60.3',
      'Asked',
      'Done',
      'Bank or side left bank, marked end forward',
      'Pair with T-0413',
      '0.0627 in, 0.52°',
      'four corners, gauged on',
      'Removed since new 0.083 in',
      '10.4 : 1 before, 11.2 : 1 after',
      'target 60',
      '± 0.5 cc',
      'Released by Ines Varga',
    ]) {
      expect(first).toContain(words)
    }
    for (const words of [
      'valve lift, in',
      'Bronze guides',
      'Surface finish not measured: comparator away',
      '+8.8',
      'leak 1.2 cfm',
      '0.700 in: not taken: retainer meets the seal',
      '0.100 in, 0.200 in, 0.300 in: within the bench’s repeatability',
      'outside the sealing area',
      '0.640 in',
      'Before it goes on the engine',
      'By Ines Varga, 3 Mar 2026, 13:50.',
    ]) {
      expect(second).toContain(words)
    }
  })

  it('carries every word and figure it was given, on both papers', async () => {
    const words = (value: unknown): string[] => {
      if (typeof value === 'string') return [value]
      if (value === null || typeof value !== 'object') return []
      return Object.values(value).flatMap(words)
    }
    const { language, outcome, drawing, flow: runs, ...rest } = spec
    expect([language, outcome, drawing.cutKind]).toEqual(['en', 'released', 'angle-flat'])
    const given = [...words(rest), ...words(runs.map(({ port: _, ...run }) => run))]
    for (const paper of ['letter', 'a4'] as const) {
      // Lines wrap inside cells, so words are looked for one by one.
      const seen = new Set(flat((await readPdf(await specSheet(spec, { ...setting, paper }))).text).split(' '))
      const lost = given.flatMap((text) => text.split(/\s+/)).filter((word) => !seen.has(word) && !/₂/.test(word))
      const joined = [...seen].join(' ')
      expect(lost.filter((word) => !joined.includes(word))).toEqual([])
    }
  })

  it('heads runs that are not like for like, and says what differs', async () => {
    const unlike: SpecSheetData = {
      ...spec,
      flow: [{ ...flow('intake', 1), notLike: ['bore fixture 4.125 in before, 4.030 in after'] }],
    }
    const { text } = await readPdf(await specSheet(unlike, setting))
    expect(flat(text)).toContain('Intake, chamber 2 – not like for like')
    expect(flat(text)).toContain('bore fixture 4.125 in before, 4.030 in after')
  })

  it('says so when nothing was cut, nothing is known and the head goes back as it came', async () => {
    const bare: SpecSheetData = {
      ...spec,
      outcome: 'returned as is',
      side: null,
      headline: [],
      chambers: null,
      cuts: [],
      removedSinceNew: 'new thickness unknown',
      compression: { before: null, after: null, needs: 'needs the gasket’s bore and thickness' },
      groups: [],
      flow: [],
      notDone: ['Flat cut'],
      drawing: { ...head, cutKind: 'none', deepEdge: null, bolts: [], slotToward: null },
    }
    const text = flat((await readPdf(await specSheet(bare, setting))).text)
    for (const words of [
      'Returned as is by',
      'side not given',
      'The deck was not cut',
      'new thickness unknown',
      'needs the gasket’s bore and thickness',
      'Not done',
      'Flat cut',
    ]) {
      expect(text).toContain(words)
    }
  })

  it('names its revision and why', async () => {
    const revised = { ...spec, revision: 2, revisionReason: 'chamber 3 was read again' }
    const { text, title } = await readPdf(await specSheet(revised, setting))
    expect(title).toContain('revision 2')
    expect(text).toContain('chamber 3 was read again')
  })

  it('names the sheets it takes the place of', async () => {
    const earlier = [
      { revision: 1, reason: '', releasedBy: 'Ines Varga', releasedAt: '2 Mar 2026, 9:10' },
      { revision: 2, reason: 'spring pressure', releasedBy: 'Ada Rooke', releasedAt: '3 Mar 2026, 8:00' },
    ]
    const revised = { ...spec, revision: 3, revisionReason: 'chamber 3 was read again', earlier }
    const text = flat((await readPdf(await specSheet(revised, setting))).text)
    expect(text).toContain('This is revision 3: chamber 3 was read again.')
    expect(text).toContain('revision 1, released by Ines Varga, 2 Mar 2026, 9:10, which is kept')
    expect(text).toContain('revision 2 (spring pressure), released by Ada Rooke, 3 Mar 2026, 8:00, which is kept')
  })

  it('draws no picture for a sheet that was frozen without the numbers for one, and keeps its table', async () => {
    const { picture: _, ...chambers } = spec.chambers ?? expect.unreachable()
    const text = flat((await readPdf(await specSheet({ ...spec, chambers }, setting))).text)
    expect(text).not.toContain('target 60')
    expect(text).toContain('64.7')
  })

  it('is the same file twice for the same data, so that it can be kept by its hash', async () => {
    const [once, again] = [await specSheet(spec, setting), await specSheet(spec, setting)]
    expect(Buffer.from(once).equals(Buffer.from(again))).toBe(true)
  })
})

describe('tag label', () => {
  it('is 62 × 29 mm, a page a label, with the number in words', async () => {
    const { sizes, text } = await readPdf(await tagLabel([label, { ...label, tag: 'T-0413' }], setting))
    expect(sizes).toEqual([
      [62, 29],
      [62, 29],
    ])
    expect(text).toContain('T-0412')
    expect(text).toContain('T-0413')
  })

  it('has a code that decodes at 300 dots an inch and stays on the label', async () => {
    const code = await busiestPath(await tagLabel([label], setting))
    expect(decode(code, 300 / 25.4)).toBe(label.qrText)
    // A quiet zone of four modules on the left, and modules a cheap label printer can print.
    const moduleMm = Math.min(...code.map((part) => part.width))
    expect(moduleMm).toBeGreaterThan(0.4)
    expect(Math.min(...code.map((part) => part.x))).toBeGreaterThan(4 * moduleMm - 0.1)
    expect(Math.max(...code.map((part) => part.y + part.height))).toBeLessThan(29 - 1)
  })

  it('clips what does not fit', async () => {
    const long = {
      ...label,
      casting: 'A very long casting name that no label of this size could ever carry whole',
    }
    const { text } = await readPdf(await tagLabel([long], setting))
    expect(text).toContain('…')
  })
})

const fontFiles = [
  'barlow/400Regular/Barlow_400Regular',
  'barlow/600SemiBold/Barlow_600SemiBold',
  'barlow-condensed/500Medium/BarlowCondensed_500Medium',
  'barlow-condensed/600SemiBold/BarlowCondensed_600SemiBold',
  'noto-sans/400Regular/NotoSans_400Regular',
  'noto-sans/600SemiBold/NotoSans_600SemiBold',
]
const wholeFonts = fontFiles.map((file) =>
  fontkit.create(readFileSync(join('node_modules', '@expo-google-fonts', `${file}.ttf`))),
)

/** Whether a letter reaches as far as it does in one of the font files as they were shipped. */
function fitsOneOf(extent: Extent, letter: string): boolean {
  return wholeFonts.some((font) => {
    const box = font.layout(letter, { tnum: true }).glyphs[0]?.cbox
    if (!box) return false
    const scale = 1000 / font.unitsPerEm
    return [box.minX, box.minY, box.maxX, box.maxY].every((side, i) => Math.abs(side * scale - (extent[i] ?? NaN)) < 2)
  })
}

describe('hostile words', () => {
  const names = [
    'Ελένη Παπαδοπούλου',
    'Дмитрий Щербаков',
    'Ø 4.030″ ≤ 60 Ω',
    'Nguyễn Thị Ánh',
    '🏁🔧 Fast 👩‍🔧 Heads',
    '漢字 かな',
    'a\u0000b\u202ec\ud800d',
    '(\\) %PDF </script> {{x}}',
    'עברית',
    'हिन्दी',
    '',
  ]

  it.each(names)('%j never stops a paper', async (name) => {
    const named = { ...spec, customer: name, shop: { name, lines: [name] }, asked: [name], casting: name }
    const sheet = await readPdf(await specSheet(named, setting))
    expect(sheet.pages.length).toBeGreaterThan(0)
    const more = {
      ...job,
      customer: name,
      notes: name,
      heads: [{ ...jobHead, casting: name, planTitle: name }],
    }
    expect((await readPdf(await jobSheet(more, setting))).text).toContain('T-0412')
    expect((await tagLabel([{ ...label, tag: name, casting: name }], setting)).length).toBeGreaterThan(1000)
    const vendor = { name, lines: [name] }
    const away = await outsideSheet({ ...outside, vendor, notes: name, contact: name }, setting)
    expect((await readPdf(away)).text).toContain('26-014')
    const [gone] = handOverSlipOf.heads
    const heads = gone ? [{ ...gone, takenBy: name, partsBack: name, note: name }] : []
    const home = await handOverSlip({ ...handOverSlipOf, customer: name, heads }, setting)
    expect((await readPdf(home)).text).toContain(handOverSlipOf.total)
    const asked = await estimatePaper({ ...estimate, forWhom: name, note: name, casting: name }, setting)
    expect((await readPdf(asked)).text).toContain(estimate.number)
  })

  it.each([...names.slice(0, 4), 'Ḿ ḿ ṃ ọ ẹ', 'हिन्दी'])('%s prints and can be copied', async (name) => {
    const { text } = await readPdf(await specSheet({ ...spec, notes: [`[${name}]`] }, setting))
    // The reader gives each run of a font its own item; the blanks between runs are its own doing.
    expect(text.replace(/\s/g, '')).toContain(`[${name.replace(/\s/g, '')}]`.normalize('NFC'))
  })

  it('every letter keeps its own outline in the embedded font', async () => {
    const words = names.slice(0, 4).join(' ')
    const drawn = await drawnLetters(await specSheet({ ...spec, customer: words, notes: [words] }, setting))
    const wrong = [...words.normalize('NFC').replace(/\s/g, '')].filter((letter) => {
      const extents = drawn.get(letter) ?? []
      return extents.length === 0 || !extents.every((extent) => fitsOneOf(extent, letter))
    })
    expect(wrong).toEqual([])
  })

  it('letters no face has leave a mark', async () => {
    const { text } = await readPdf(await specSheet({ ...spec, notes: ['x🏁漢x'] }, setting))
    expect(text).toContain('x\ufffd\ufffdx')
  })

  it('a word longer than the paper is broken, not cut off', async () => {
    const word = 'Verlängerung'.repeat(40)
    const { text } = await readPdf(await specSheet({ ...spec, notes: [word] }, setting))
    expect(text.replace(/\s/g, '')).toContain(word)
  })
})

/** The first of a list that has one. */
function firstOf<T>(list: readonly T[]): T {
  const [first] = list
  if (first === undefined) throw new Error('The sample has none.')
  return first
}

describe('large papers', () => {
  it('500 lines of notes are all there, over numbered pages', async () => {
    const notes = Array.from({ length: 500 }, (_, i) => `line ${i + 1} of the notes`).join('\n')
    const { pages, text } = await readPdf(await jobSheet({ ...job, notes }, setting))
    expect(pages.length).toBeGreaterThan(1)
    const lines = flat(text).match(/line \d+ of the notes/g) ?? []
    expect(lines).toHaveLength(500)
    expect(lines.at(-1)).toBe('line 500 of the notes')
    expect(flat(pages.at(-1) ?? '')).toContain(`page ${pages.length} of ${pages.length}`)
  })

  it('a sheet for a vendor has 500 lines of instructions and twelve heads, each with its figures', async () => {
    const notes = Array.from({ length: 500 }, (_, i) => `instruction ${i + 1}.`).join('\n')
    const heads = Array.from({ length: 12 }, (_, i) => ({ ...firstOf(outside.heads), tag: `T-05${10 + i}` }))
    const { pages, text } = await readPdf(await outsideSheet({ ...outside, heads, notes }, setting))
    expect(flat(text).match(/instruction \d+\./g)).toHaveLength(500)
    for (const [i, { tag }] of heads.entries()) expect(pages[i]).toContain(tag)
    expect(flat(pages.at(-1) ?? '')).toContain(`page ${pages.length} of ${pages.length}`)
  })

  it('a receipt has 150 lines and ten heads, its sums after the last of them', async () => {
    const lines = Array.from({ length: 150 }, (_, i) => ({
      text: `work number ${i + 1} ${'with a long description '.repeat(i % 4)}`,
      quantity: '1',
      each: '$1.00',
      amount: '$1.00',
    }))
    const heads = Array.from({ length: 10 }, (_, i) => ({
      ...firstOf(handOverSlipOf.heads),
      tag: `T-05${10 + i}`,
    }))
    const { pages, text } = await readPdf(await handOverSlip({ ...handOverSlipOf, lines, heads }, setting))
    expect(flat(text).match(/work number \d+/g)).toHaveLength(150)
    for (const { tag } of heads) expect(pages[0]).toContain(tag)
    for (const page of pages.slice(1, -1)) expect(page).toContain('Amount')
    expect(pages.at(-1)).toContain(handOverSlipOf.total)
    expect(pages.at(-1)).toContain('Received by')
  })

  it('an estimate goes on to more pages, in the order of its parts', async () => {
    const groups = Array.from({ length: 14 }, (_, g) => ({
      title: `Part ${g + 1}`,
      lines: Array.from({ length: 9 }, (_, i) => ({
        label: `figure ${g + 1}.${i + 1}`,
        value: `${i}.0 thou`,
        note: 'as far as is known',
      })),
    }))
    const answer = { ...estimate.answer, groups }
    const { pages, text } = await readPdf(await estimatePaper({ ...estimate, answer }, setting))
    const read = flat(text).match(/figure \d+\.\d/g) ?? []
    expect(read).toEqual(groups.flatMap(({ lines }) => lines.map(({ label }) => label)))
    expect(pages.length).toBeGreaterThan(1)
    expect(pages.length).toBeLessThan(6)
    for (const page of pages) expect(flat(page).length).toBeGreaterThan(200)
  })

  it('a table cell longer than a page goes on over the next', async () => {
    const how = Array.from({ length: 200 }, (_, i) => `part${i + 1}`).join(' and also ')
    const cut = spec.cuts[0]
    const { text } = await readPdf(await specSheet({ ...spec, cuts: cut ? [{ ...cut, how }] : [] }, setting))
    expect(flat(text)).toContain('part200')
  })

  it.each([
    [40, 'both tables beside each other on one page'],
    [95, 'the head of the table on each page'],
  ])('12 chambers and %i lifts of each port, each figure there, %s', async (count) => {
    const cc = Array.from({ length: 12 }, (_, i) => (50 + i / 10).toFixed(1))
    const lifts = Array.from({ length: count }, (_, i) => (0.01 * (i + 1)).toFixed(3))
    const run = flow('intake', 1)
    const rows = lifts.map((lift, i) => ({
      lift: `${lift} in`,
      before: `${100 + i}.3`,
      after: `${200 + i}.7`,
      diffCfm: '+100.4',
      diffPercent: '+50',
      note: '',
    }))
    const data: SpecSheetData = {
      ...spec,
      chambers: {
        ...(spec.chambers ?? expect.unreachable()),
        rows: cc.map((afterCc, i) => ({ chamber: String(i + 1), beforeCc: '54.5', afterCc, remark: '' })),
      },
      drawing: { ...head, chambers: 12, chamberReadings: cc },
      flow: [
        { ...run, rows },
        { ...run, port: 'exhaust', rows },
      ],
    }
    const { pages, text } = await readPdf(await specSheet(data, setting))
    for (const figure of [...cc, ...rows.map((row) => row.before), ...rows.map((row) => row.after)]) {
      expect(text).toContain(figure)
    }
    const tables = pages.filter((page) => /\b0\.\d{3} in/.test(page) && page.includes('+100.4'))
    expect(tables.length > 1).toBe(count > 40)
    for (const page of tables) expect(page).toContain('before, cfm')
  })

  it('60 things asked and done take the pages they need', async () => {
    const asked = Array.from({ length: 60 }, (_, i) => `asked for thing ${i + 1}.`)
    const { text } = await readPdf(await specSheet({ ...spec, asked, done: asked }, setting))
    expect(flat(text).match(/asked for thing \d+\./g)).toHaveLength(120)
  })

  it('the shop’s name stands at the foot of every page', async () => {
    const notes = 'word '.repeat(4000)
    const { pages } = await readPdf(await jobSheet({ ...job, notes }, setting))
    for (const page of pages) expect(page).toContain(`${shop.name} · Job sheet 26-0117`)
  })
})
