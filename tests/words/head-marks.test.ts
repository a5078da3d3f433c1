import { expect, it } from 'vitest'
import type { HeadMark } from '@/lib/core/route/head-marks'
import { markText, noticeLine } from '@/lib/words/head-marks'
import { markName } from '@/lib/words/mark-names'

const order = { vendor: 'Northgate Grinding', number: 'O-0004' }
const said: readonly (readonly [HeadMark, string, string])[] = [
  [{ code: 'urgent' }, 'urgent', 'urgent'],
  [{ code: 'held', reason: 'bent stud' }, 'held', 'held: bent stud'],
  [{ code: 'comeback', cause: 'seat leaks', pays: 'the shop' }, 'comeback', 'comeback: seat leaks; paid by: the shop'],
  [{ code: 'comeback', cause: '', pays: '' }, 'comeback', 'comeback: cause not known yet; paid by: not said yet'],
  [{ code: 'rework', rework: { from: 'owner', text: 'weld it' } }, 'rework', 'rework, as the owner decided: weld it'],
  [{ code: 'rework', rework: { from: 'owner', text: '' } }, 'rework', 'rework, as the owner decided'],
  [
    { code: 'rework', rework: { from: 'vendor', order, text: 'insert 3 stands proud' } },
    'rework',
    'rework of Northgate Grinding, order O-0004: insert 3 stands proud',
  ],
  [{ code: 'finding', what: 'guide 2 is loose' }, 'finding open', 'finding not answered yet: guide 2 is loose'],
  [{ code: 'mate-held', tag: 'T-0412' }, 'mate held', 'its mate T-0412 is held'],
  [
    { code: 'out', lack: { code: 'off-target', point: '2', offCc: 0.6, targetCc: 60, toleranceCc: 0.2 } },
    'out of tolerance',
    'out of tolerance: ',
  ],
]

it('says what is odd about a head in a line, and in a word or two', () => {
  for (const [mark, name, words] of said) {
    expect(markName[mark.code]).toBe(name)
    if (mark.code === 'out') expect(markText(mark)).toMatch(/^out of tolerance: .*chamber 2/i)
    else expect(markText(mark)).toBe(words)
  }
})

it('ends with one full stop, whatever was typed', () => {
  expect(noticeLine({ code: 'finding', what: 'Guide 2 is loose.' })).toBe(
    'Finding reported: Guide 2 is loose. Not answered yet.',
  )
  const rework = { from: 'vendor', order, text: 'It stands proud. ' } as const
  expect(noticeLine({ code: 'rework', rework })).toBe('Rework of Northgate Grinding, order O-0004: It stands proud.')
})

it('says in a sentence at the step what has no notice of its own there', () => {
  expect(said.map(([mark]) => noticeLine(mark)).filter((line) => line !== null)).toEqual([
    'Comeback: seat leaks; paid by: the shop.',
    'Comeback: cause not known yet; paid by: not said yet.',
    'Rework, as the owner decided: weld it.',
    'Rework, as the owner decided.',
    'Rework of Northgate Grinding, order O-0004: insert 3 stands proud.',
    'Finding reported: guide 2 is loose. Not answered yet.',
  ])
})
