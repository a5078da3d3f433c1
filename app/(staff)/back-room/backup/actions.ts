'use server'
import { startBackupSchema } from '@/lib/schemas/backup'
import { startBackup } from '@/lib/use-cases/backup/start-backup'
import { defineAction } from '@/lib/web/define-action'

export const startBackupAction = defineAction('startBackup', startBackupSchema, startBackup, () => '/back-room/backup')
