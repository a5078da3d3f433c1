import { describe, expect, it } from 'vitest'
import { namesAll, pickAsked } from '@/lib/core/find/pick'

const id = '019caed9-4300-7000-8000-0000000000fe'
const other = '019caed9-4300-7000-8000-0000000000ff'

describe('what a picker asks for', () => {
  it('is by ids when nothing else is typed', () => {
    expect(pickAsked(id)).toEqual({ ids: [id] })
    expect(pickAsked(` ${id},${other} `)).toEqual({ ids: [id, other] })
  })

  it('is by words otherwise, small and capital letters alike', () => {
    expect(pickAsked(' Harrow  64 ')).toEqual({ words: ['harrow', '64'] })
    expect(pickAsked(`${id} wedge`)).toEqual({ words: [id, 'wedge'] })
    expect(pickAsked('  ')).toEqual({ words: [] })
  })

  it('needs every word in the name', () => {
    expect(namesAll('Öhl wedge 64', ['ö', '64'])).toBe(true)
    expect(namesAll('Öhl wedge 64', ['öhl', '58'])).toBe(false)
    expect(namesAll('anything', [])).toBe(true)
  })
})
