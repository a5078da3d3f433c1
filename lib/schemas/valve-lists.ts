import { z } from 'zod'
import type { Result } from '@/lib/core/errors'
import { parseSeatAngles, parseShims } from '@/lib/core/valve-sheet/lists'
import { words } from './figure'

/** A list as typed, apart by commas. */
const listOf = <T>(parse: (text: string) => Result<T>) =>
  words(400).transform((text, ctx): T => {
    const parsed = parse(text)
    if (parsed.ok) return parsed.value
    ctx.addIssue({ code: 'custom', message: parsed.refusal.message })
    return z.NEVER
  })

export const valveListsSchema = z.object({ shims: listOf(parseShims), angles: listOf(parseSeatAngles) })
export type SetValveLists = z.output<typeof valveListsSchema>
