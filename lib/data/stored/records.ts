import { z } from 'zod'
import { storedValue } from './stored-json'

/** Flow bench conditions, checking valves, plug: as typed, by name. */
export type Conditions = Readonly<Record<string, string>>
export const readingConditions = storedValue<Conditions>('ReadingSet.conditions', z.record(z.string(), z.string()))

/** The jobs that went over when two customers were merged. */
export const mergedJobs = storedValue<readonly string[]>('CustomerMerge.jobIds', z.array(z.string()))

export const returnedNotDone = storedValue<readonly string[]>('ReturnedAsIs.notDone', z.array(z.string()))

/** Fields and what they became: every action has its own. */
export type Changes = Readonly<Record<string, unknown>>
export const auditChanges = storedValue<Changes>('AuditEntry.changes', z.record(z.string(), z.unknown()))

/** What a deed answered; only the same deed, sent again, asks for it. */
export const operationResult = storedValue<unknown>('Operation.result', z.unknown())
