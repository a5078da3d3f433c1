import { describe, expect, it } from 'vitest'
import { placeOf } from '@/app/(staff)/stations/_app/place'
import { stepHref } from '@/app/(staff)/stations/step-href'
import { keyOf } from '@/lib/core/route/keys'

describe('what an address of the stations shows', () => {
  it.each([
    ['/stations', { is: 'rack' }],
    ['/stations/', { is: 'rack' }],
    ['/stations/wash', { is: 'queue', station: 'wash', page: 1 }],
    ['/stations/wash?page=3', { is: 'queue', station: 'wash', page: 3 }],
    ['/stations/wash?page=-1', { is: 'queue', station: 'wash', page: 1 }],
    ['/stations/wash?page=x', { is: 'queue', station: 'wash', page: 1 }],
  ])('%s', (address, place) => expect(placeOf(address)).toEqual(place))

  it.each(['/counter', '/stations/nowhere', '/stations/wash/heads/v-1', '/stations/wash/heads/v-1/more?step=crack'])(
    '%s shows none of its places',
    (address) => expect(placeOf(address)).toBeNull(),
  )

  it('comes back from the address of each step', () => {
    for (const key of [keyOf('crack'), keyOf('flow-before'), { ...keyOf('crack'), orderId: 'o-1' }]) {
      expect(placeOf(stepHref('wash', 'v-1', key))).toEqual({ is: 'step', station: 'wash', visitId: 'v-1', key })
    }
  })
})
