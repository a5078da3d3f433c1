import type { Refusal } from '../core/errors'

/**
 * What became of one deed. `done`: with what it answered. `refused`: it will not be done; both sides are told. `again`:
 * nothing is wrong with it, the same is sent later.
 */
export type OperationAnswer =
  | { readonly id: string; readonly state: 'done'; readonly value: unknown }
  | { readonly id: string; readonly state: 'refused'; readonly refusal: Refusal }
  | { readonly id: string; readonly state: 'again'; readonly refusal: Refusal }
