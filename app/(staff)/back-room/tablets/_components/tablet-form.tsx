'use client'
import type { Option } from '@/app/_components/ui/select'
import { changeTabletSchema } from '@/lib/schemas/tablet'
import type { TabletSeen } from '@/lib/use-cases/tablets/see-tablets'
import { EntryForm } from '../../_components/entry-form'
import { changeTabletAction } from '../actions'
import { TabletFields } from './tablet-fields'

type Props = { tablet: TabletSeen; stations: readonly Option[]; by: string }

const labels: Readonly<Record<string, string>> = { name: 'Name', station: 'Station' }

export function TabletForm({ tablet, stations, by }: Props) {
  const { id: tabletId, version, name, station } = tablet
  return (
    <EntryForm
      schema={changeTabletSchema}
      action={changeTabletAction}
      values={{ tabletId, version, name, station }}
      submitLabel="Save name and station"
      fields={({ text }) => <TabletFields stations={stations} name={text('name')} station={text('station')} />}
      kept={{ what: name, labelOf: (path) => labels[path] ?? path, by }}
    />
  )
}
