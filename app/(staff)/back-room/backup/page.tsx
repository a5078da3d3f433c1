import type { Metadata } from 'next'
import { Table } from '@/app/_components/ui/table'
import { When } from '@/app/_components/ui/when'
import { seeBackups } from '@/lib/use-cases/backup/see-backups'
import { requirePerson } from '@/lib/web/require-actor'
import { backupKindWords } from '@/lib/words/backup'
import { ActionButton } from '../_components/action-button'
import { PageHead } from '../_components/page-head'
import { startBackupAction } from './actions'
import { BackupNotices } from './_components/backup-notices'
import { TakeAlong } from './_components/take-along'
import { WhileRunning } from './_components/while-running'

export const metadata: Metadata = { title: 'Backup' }

export default async function BackupPage() {
  const seen = await seeBackups(await requirePerson('backup.make'), new Date())
  return (
    <>
      <PageHead up={['/back-room', 'Back room']} title="Backup">
        <p className="soft">
          A backup is one file with everything: the records, the photos and papers, and the shop’s secret. Whoever has
          it has the shop. It is opened again and checked before it counts. Kept are 7 days, 4 weeks and 12 months.
        </p>
      </PageHead>
      <BackupNotices {...seen} />
      {seen.doing === null ? (
        <ActionButton action={startBackupAction} input={{}}>
          Back up now
        </ActionButton>
      ) : (
        <WhileRunning doing={seen.doing} />
      )}
      <Kept {...seen} />
      <section className="part" aria-labelledby="restore">
        <h2 id="restore">To put one back</h2>
        <p>
          Stop the server. In the folder of the program: <code>npm run restore</code> and the backup’s file. It is
          checked first. What is there now is set aside, not deleted.
        </p>
      </section>
      <section className="part" aria-labelledby="along">
        <h2 id="along">Everything for another program</h2>
        <p>
          All tables as CSV and JSON with a list of what each column means, and all photos and papers, in one archive.
          Passwords and links are not in it, so it is no backup. That you took it is written to the audit trail.
        </p>
        <TakeAlong />
      </section>
    </>
  )
}

type Seen = Awaited<ReturnType<typeof seeBackups>>

function Kept({ backups, folder, zone, locale }: Pick<Seen, 'backups' | 'folder' | 'zone' | 'locale'>) {
  return (
    <section className="part" aria-labelledby="kept">
      <h2 id="kept">Backups kept</h2>
      <p className="soft">In {folder}</p>
      <Table
        label="Backups kept"
        columns={[
          { id: 'made', label: 'Made', head: true },
          { id: 'why', label: 'Why' },
          { id: 'size', label: 'Size', figure: true },
          { id: 'checked', label: 'Found whole' },
        ]}
        rows={backups.map(({ name, kind, at, size, checkedAt }) => ({
          id: name,
          cells: {
            made: <When at={at} zone={zone} locale={locale} />,
            why: backupKindWords[kind],
            size,
            checked: checkedAt === null ? 'not checked' : <When at={checkedAt} zone={zone} locale={locale} />,
          },
        }))}
        empty={<p className="soft">There is no backup yet.</p>}
      />
    </section>
  )
}
