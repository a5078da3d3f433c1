import { createHash } from 'node:crypto'
import sharp from 'sharp'
import type { Actor } from '@/lib/core/access/roles'
import { chooseLogoSchema } from '@/lib/schemas/logo'
import { chooseLogo } from '@/lib/use-cases/shop/choose-logo'

const size = 320
const centre = size / 2
const hub = 138
const paddles = 12

/** One board of the wheel, as it stands at the top. */
const board = `<path d="M ${centre - 7} ${hub - 52} v -66 h -22 v -14 h 58 v 14 h -22 v 66 z"/>`

const wheel = (): string =>
  Array.from(
    { length: paddles },
    (_, at) => `<g transform="rotate(${(at * 360) / paddles} ${centre} ${hub})">${board}</g>`,
  ).join('')

/** A wave of the race below the wheel, from edge to edge. */
const wave = (y: number): string => `<path d="M 14 ${y} q 36 -26 73 0 t 73 0 t 73 0 t 73 0"/>`

/** The wheel of a mill over its race: drawn here, for a shop that does not exist. */
const drawing = (): string => `<svg xmlns="http://www.w3.org/2000/svg" width="${size}" height="${size}">
  <g fill="#22506a">${wheel()}</g>
  <circle cx="${centre}" cy="${hub}" r="92" fill="none" stroke="#22506a" stroke-width="14"/>
  <circle cx="${centre}" cy="${hub}" r="52" fill="#22506a"/>
  <circle cx="${centre}" cy="${hub}" r="20" fill="#ffffff"/>
  <g fill="none" stroke="#ffffff" stroke-width="34">${wave(268)}</g>
  <g fill="none" stroke="#22506a" stroke-width="13" stroke-linecap="round">${wave(262)}${wave(300)}</g>
</svg>`

/** As an owner would choose it: a picture with nothing behind it. */
export const drawLogo = (): Promise<Uint8Array> => sharp(Buffer.from(drawing())).png().toBuffer()

export async function seedLogo(actor: Actor, now: Date): Promise<void> {
  const bytes = await drawLogo()
  const sha256 = createHash('sha256').update(bytes).digest('hex')
  const { seen } = chooseLogoSchema.parse({ seen: '', sha256 })
  await chooseLogo(actor, { seen, bytes }, { now })
}
