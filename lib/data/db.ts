import 'server-only'
import type { Prisma, PrismaClient } from '@/prisma/generated/sqlite/client'
import { openClient } from './client'

export type Db = PrismaClient
export type Tx = Prisma.TransactionClient
/** Reads may run on either. */
export type Reader = Db | Tx

/** The one client of this process; opened (and checked) on first use. */
export const db = (): Promise<Db> => openClient()
