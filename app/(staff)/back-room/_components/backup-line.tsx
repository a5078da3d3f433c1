import { ButtonLink } from '@/app/_components/ui/button-link'
import { Notice } from '@/app/_components/ui/notice'
import type { BackupLine as Seen } from '@/lib/use-cases/backup/see-backups'
import { backupWords } from '@/lib/words/backup'

/** One line: how old the newest backup is, red when it cannot be relied on, with the way to make one. */
export function BackupLine({ line }: { line: Seen }) {
  const fault = line.fault || line.secondFault
  const isBad = line.age === 'none' || line.age === 'old' || fault !== ''
  const words = `${backupWords(line)} ${fault}`.trim()
  const to = <ButtonLink href="/back-room/backup">Backup</ButtonLink>
  if (!isBad) {
    return (
      <p className="row">
        <span>{words}</span> {to}
      </p>
    )
  }
  return (
    <Notice kind="stop" live={false} title="Backup">
      <p>{words}</p>
      {to}
    </Notice>
  )
}
