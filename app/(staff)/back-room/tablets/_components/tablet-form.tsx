'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import type { Option } from '@/app/_components/ui/select'
import { changeTabletSchema } from '@/lib/schemas/tablet'
import type { TabletSeen } from '@/lib/use-cases/tablets/see-tablets'
import { ConflictResolver } from '../../_components/conflict-resolver'
import { changeTabletAction } from '../actions'
import { TabletFields } from './tablet-fields'

type Props = { tablet: TabletSeen; stations: readonly Option[]; by: string }

const labels: Readonly<Record<string, string>> = { name: 'Name', station: 'Station' }

export function TabletForm({ tablet, stations, by }: Props) {
  const { id: tabletId, version, name, station } = tablet
  const fresh = { tabletId, version, name, station }
  const form = useActionForm(changeTabletSchema, changeTabletAction, { defaultValues: fresh })
  return (
    <ActionForm form={form} submitLabel="Save name and station">
      <TabletFields stations={stations} name={form.text('name')} station={form.text('station')} />
      <ConflictResolver form={form} fresh={fresh} what={name} labelOf={(path) => labels[path] ?? path} by={by} />
    </ActionForm>
  )
}
