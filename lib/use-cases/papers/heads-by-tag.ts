import { parseTag, tagText } from '@/lib/core/shop/tag-number'
import type { Reader } from '@/lib/data/db'
import { headsOfTags, newestLabelVisits, type LabelVisit } from '@/lib/data/label-heads'

export type HeadsByTag = {
  /** In the order they were asked for, each head once. */
  readonly visits: readonly LabelVisit[]
  /** Every number asked for, with the head it found. */
  readonly found: readonly { readonly number: string; readonly visit: LabelVisit }[]
  /** No tag at all, or one that no head here ever wore: as typed. */
  readonly unknown: readonly string[]
}

/** The heads of tags as typed or scanned; an old number finds the head that wore it last. */
export async function headsByTag(reader: Reader, typed: readonly string[]): Promise<HeadsByTag> {
  if (typed.length === 0) return { visits: [], found: [], unknown: [] }
  const asked = typed.map((text) => {
    const tag = parseTag(tagText(text))
    return tag.ok ? tag.value.number : text.trim()
  })
  const headIds = await headsOfTags(reader, asked)
  const newest = await newestLabelVisits(reader, [...new Set(headIds.values())])
  const numbers = [...new Set(asked)].map((number) => ({
    number,
    visit: newest.get(headIds.get(number) ?? ''),
  }))
  const found = numbers.flatMap(({ number, visit }) => (visit ? [{ number, visit }] : []))
  return {
    visits: [...new Set(found.map(({ visit }) => visit))],
    found,
    unknown: numbers.flatMap(({ number, visit }) => (visit ? [] : [number])),
  }
}
