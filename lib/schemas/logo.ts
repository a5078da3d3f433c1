import { z } from 'zod'
import { text } from './text'

/** A logo is no photo: what is larger was not made for a letterhead. */
export const mostLogoBytes = 4 * 1024 * 1024

const sha256 = text().regex(/^[0-9a-f]{64}$/)

/** The logo that the page showed; '' for none: it is changed only if it is still that one. */
const seen = z.union([z.literal(''), sha256]).transform((hash) => (hash === '' ? null : hash))

/** `sha256` is of the file as it came up. */
export const chooseLogoSchema = z.object({ seen, sha256 })
export const removeLogoSchema = z.object({ seen })

export type ChooseLogo = z.output<typeof chooseLogoSchema>
export type RemoveLogo = z.output<typeof removeLogoSchema>
