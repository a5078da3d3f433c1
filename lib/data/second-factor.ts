import 'server-only'
import type { Db, Tx } from './db'
import { newRecoveryCode, recoveryCodes, recoveryHash, stepOfCode } from './factor-codes'
import { newId } from './ids'
import { seal, unseal } from './sealed'

const purposeOf = (personId: string): string => `second factor of ${personId}`

export const sealKey = (personId: string, key: Uint8Array): string =>
  seal(Buffer.from(key).toString('base64url'), purposeOf(personId))

/** Null: sealed with another secret, as in a data folder whose secret was lost. */
export function openKey(personId: string, sealed: string | null): Uint8Array | null {
  const text = sealed === null ? null : unseal(sealed, purposeOf(personId))
  return text === null ? null : Buffer.from(text, 'base64url')
}

type Holder = { readonly id: string; readonly factorKey: string | null; readonly factorStep: number | null }

/** Takes a code of the person's app or one of their recovery codes, each once. False: it is none, or was taken before. */
export async function takeFactorCode(client: Db, person: Holder, code: string, now: Date): Promise<boolean> {
  if (code.length > 50) return false
  const key = openKey(person.id, person.factorKey)
  const step = key && stepOfCode(key, code, person.factorStep, now)
  if (step !== null) {
    // Of two that send the same code at once one changes the row.
    const taken = await client.person.updateMany({
      where: { id: person.id, factorKey: person.factorKey, OR: [{ factorStep: null }, { factorStep: { lt: step } }] },
      data: { factorStep: step },
    })
    return taken.count === 1
  }
  const spent = await client.recoveryCode.updateMany({
    where: { personId: person.id, codeHash: recoveryHash(code), usedAt: null },
    data: { usedAt: now },
  })
  return spent.count === 1
}

/** New recovery codes in the place of all there were; they are shown once, only their hashes stay. */
export async function renewRecoveryCodes(tx: Tx, personId: string, codes: readonly string[], now: Date): Promise<void> {
  await tx.recoveryCode.deleteMany({ where: { personId } })
  await tx.recoveryCode.createMany({
    data: codes.map((code) => ({ id: newId(now), personId, codeHash: recoveryHash(code) })),
  })
}

export const newRecoveryCodes = (): string[] => Array.from({ length: recoveryCodes }, newRecoveryCode)

export const recoveryCodesLeft = (client: Db, personId: string): Promise<number> =>
  client.recoveryCode.count({ where: { personId, usedAt: null } })

/** No second factor any more, and nothing of it. */
export async function dropFactor(tx: Tx, personId: string): Promise<void> {
  await tx.recoveryCode.deleteMany({ where: { personId } })
  await tx.person.updateMany({
    where: { id: personId },
    data: { factorKey: null, factorDraft: null, factorStep: null },
  })
}
