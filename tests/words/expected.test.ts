import { describe, expect, it } from 'vitest'
import type { Expected } from '@/lib/core/expected/types'
import { expectedWords } from '@/lib/words/expected'

const corners = { code: 'other-corners' } as const
const fresh = { code: 'new-less-cut', before: 4.25, depthIn: 0 } as const
const spanOf = (low: number | null, high: number | null): Expected => ({
  ...{ value: null, why: corners, low, high, lowWhy: corners, highWhy: fresh },
})

describe('what stands beside a cell', () => {
  it('is a span, where both ends can be met', () => {
    expect(expectedWords(spanOf(4.2, 4.253), 'thickness', 'in')).toBe('4.2000 to 4.2530 in, the other three corners')
  })

  it('says both sides with whose they are, where no figure can agree with both', () => {
    expect(expectedWords(spanOf(4.985, 4.253), 'thickness', 'in')).toBe(
      'at most 4.2530 in, the new thickness; at least 4.9850 in, the other three corners',
    )
  })
})
