import { describe, expect, test } from 'vitest'
import { orderDays } from '@/lib/core/shop/order-days'

const order = { since: '2026-03-02', promisedOn: '2026-03-09', isOpen: true, waiting: [] }

describe('how an order stands by the calendar', () => {
  test('out since the 2nd, promised for the 9th: on the 12th ten days out, three late', () => {
    expect(orderDays(order, '2026-03-12')).toEqual({ daysOut: 10, daysLate: 3, holdsUp: null })
  })

  test('on its day it is not late, nor before', () => {
    expect(orderDays(order, '2026-03-09').daysLate).toBe(0)
    expect(orderDays(order, '2026-03-03').daysLate).toBe(0)
  })

  test('an order without a promise, and one that nothing is to come of, is never late', () => {
    expect(orderDays({ ...order, promisedOn: null }, '2026-05-01').daysLate).toBe(0)
    expect(orderDays({ ...order, isOpen: false }, '2026-05-01').daysLate).toBe(0)
  })

  test('it holds up the earliest promise to a customer; those without one wait for nothing', () => {
    const waiting = ['2026-04-01', null, '2026-03-20', '2026-12-31']
    expect(orderDays({ ...order, waiting }, '2026-03-12').holdsUp).toBe('2026-03-20')
    expect(orderDays({ ...order, waiting: [null] }, '2026-03-12').holdsUp).toBeNull()
  })

  test('days run over a month’s end and a leap day', () => {
    expect(orderDays({ ...order, since: '2028-02-27' }, '2028-03-01').daysOut).toBe(3)
  })
})
