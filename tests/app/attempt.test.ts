import { describe, expect, it } from 'vitest'
import { OperationIds } from '@/app/_components/form/operation-ids'
import { newOperationId } from '@/app/_components/form/operation-id'

describe('operation ids', () => {
  it('are version 4 UUIDs (RFC 9562: version nibble 4, variant bits 10)', () => {
    const ids = Array.from({ length: 200 }, newOperationId)
    for (const id of ids) expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/)
    expect(new Set(ids).size).toBe(200)
  })
})

describe('attempts at a change', () => {
  it('go out under the same id while the same content has no answer', () => {
    const attempts = new OperationIds()
    expect(attempts.idFor({ name: 'Ada' })).toBe(attempts.idFor({ name: 'Ada' }))
  })

  it('get a new id for other content', () => {
    const attempts = new OperationIds()
    expect(attempts.idFor({ name: 'Ada' })).not.toBe(attempts.idFor({ name: 'Adam' }))
  })

  it('get a new id for the same content once there was an answer', () => {
    const attempts = new OperationIds()
    const first = attempts.idFor({ name: 'Ada' })
    attempts.answered()
    expect(attempts.idFor({ name: 'Ada' })).not.toBe(first)
  })
})
