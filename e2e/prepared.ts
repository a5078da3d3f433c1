import type { PreparedCustomer } from '../tests/setup/prepared-heads'

type Prepared = { readonly number: string; readonly tag: string; readonly visit: string }

/** The job and the head of a customer that stand ready when the server starts; see `tests/setup/prepared-heads.ts`. */
export function prepared(customer: PreparedCustomer): Prepared {
  const found = allPrepared()[customer]
  if (!found) throw new Error(`No head stands ready for ${customer}.`)
  return found
}

export const allPrepared = (): Readonly<Record<string, Prepared>> =>
  JSON.parse(process.env.BRASSTAG_E2E_PREPARED ?? '{}') as Readonly<Record<string, Prepared>>
