import { createHash, randomInt } from 'node:crypto'
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'

/** Without what is mistaken when read off a screen: 0 O, 1 I L, 5 S, 8 B. */
const letters = 'ACDEFGHJKMNPQRTUVWXYZ234679'

/** Three groups of four: 57 bits, more than can be tried through a form. */
const makeCode = (): string =>
  Array.from({ length: 3 }, () => Array.from({ length: 4 }, () => letters[randomInt(letters.length)]).join('')).join(
    '-',
  )

/** A code that makes the first owner. Only its hash is kept; the code is for the console, once. */
export function newOwnerCode(folder: string): string {
  const code = makeCode()
  const hash = createHash('sha256').update(code).digest('hex')
  writeFileSync(join(folder, 'owner-code.sha256'), hash, { mode: 0o600 })
  return code
}
