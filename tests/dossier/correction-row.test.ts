import { describe, expect, it } from 'vitest'
import type { EffectiveReading } from '@/lib/core/readings/effective'
import { readingKinds, type ReadingKind } from '@/lib/core/readings/types'
import { readingSpecs } from '@/lib/core/readings/specs'
import { quantities } from '@/lib/core/units/quantities'
import { correctionRow } from '@/lib/dossier/add-correction'

const standing = (kind: ReadingKind) => ({ id: 'r', kind, point: '', filled: false }) as EffectiveReading
const replaced = (kind: ReadingKind, text: string) =>
  correctionRow(standing(kind), { correction: 'replace', text, reason: 'misread' })
const kindsOf = (form: string) => readingKinds.filter((kind) => readingSpecs[kind].form === form)

describe('what takes the place of a reading, of every kind there is', () => {
  it.each(kindsOf('choice'))('%s: each answer of its list, by code or in words, is kept by its code', (kind) => {
    const { choices = [], mayBeWords } = readingSpecs[kind]
    expect(choices.length).toBeGreaterThan(1)
    for (const { value, label } of choices) {
      expect(replaced(kind, value)).toMatchObject({ text: value, value: null })
      expect(replaced(kind, label.toUpperCase())).toMatchObject({ text: value, value: null })
    }
    // Words that are no answer of the list would be read as "all is well" by whatever looks for the bad ones.
    if (mayBeWords) expect(replaced(kind, 'something else')).toMatchObject({ text: 'something else' })
    else expect(() => replaced(kind, 'something else')).toThrow(/^Choose one: /)
  })

  it.each(kindsOf('figure'))('%s: a figure in its own unit, read and kept as typed', (kind) => {
    const { quantity = 'depth', mayBeWords } = readingSpecs[kind]
    const { least, most, unit } = quantities[quantity]
    // Whole in the unit that is typed, or a tenth of the way where there is no whole one.
    const value = Number((least < 0 ? most / 2 : least + (most - least) / 10).toFixed(3))
    expect(replaced(kind, `${value} ${unit}`)).toMatchObject({ value: expect.closeTo(value, 9), unit })
    if (mayBeWords) expect(replaced(kind, 'not known')).toMatchObject({ value: null, text: 'not known' })
    else expect(() => replaced(kind, 'not known')).toThrow()
    expect(() => replaced(kind, '')).toThrow('Enter the correct value.')
  })

  it.each(kindsOf('note'))('%s: words as they are', (kind) => {
    expect(replaced(kind, '30 45 60')).toMatchObject({ text: '30 45 60', value: null, unit: '' })
  })

  it('is nothing where the old one is withdrawn', () => {
    const gone = correctionRow(standing('crack'), { correction: 'withdraw', text: '', reason: 'other head' })
    expect(gone).toMatchObject({ text: '', value: null, correction: 'withdraw', correctsId: 'r' })
  })
})
