import { Notice } from '@/app/_components/ui/notice'
import { counted } from '@/lib/core/counted'
import type { seeBackups } from '@/lib/use-cases/backup/see-backups'
import { backupWords } from '@/lib/words/backup'

type Seen = Awaited<ReturnType<typeof seeBackups>>

/** How it stands with the backups: first what must be put right. */
export function BackupNotices({ line, leftOut, second }: Pick<Seen, 'line' | 'leftOut' | 'second'>) {
  const isBad = line.age === 'none' || line.age === 'old'
  return (
    <div className="stack">
      {line.fault !== '' && (
        <Notice kind="stop" live={false} title="The last backup failed">
          {line.fault}
        </Notice>
      )}
      {isBad ? (
        <Notice kind="stop" live={false} title="No new backup">
          {backupWords(line)}
        </Notice>
      ) : (
        <p>{backupWords(line)}</p>
      )}
      {leftOut > 0 && (
        <Notice kind="caution" live={false}>
          {counted(leftOut, 'photo or paper is', 'photos or papers are')} missing or damaged in the shop itself, and in
          no new backup. An older backup may have them.
        </Notice>
      )}
      <SecondFolder second={second} fault={line.secondFault} />
    </div>
  )
}

function SecondFolder({ second, fault }: { second: Seen['second']; fault: string }) {
  if (second === null) {
    return (
      <Notice kind="caution" live={false} title="One disk">
        All backups are on the disk of the shop itself. Start the server with BRASSTAG_BACKUP_TO and a folder on a stick
        or a share, and each backup is copied there too.
      </Notice>
    )
  }
  if (!second.isThere) {
    return (
      <Notice kind="stop" live={false} title="The second folder is missing">
        {second.path} is not there: plug the stick in, or connect the share. No backup is copied until then.
      </Notice>
    )
  }
  if (fault !== '') {
    return (
      <Notice kind="stop" live={false} title="No copy in the second folder">
        {fault}
      </Notice>
    )
  }
  return (
    <p>
      Each backup is copied to {second.path}.{' '}
      {second.isOnSameDisk && 'That folder is on the same disk: both are lost together.'}
    </p>
  )
}
