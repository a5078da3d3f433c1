'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { CheckList } from '@/app/_components/ui/choice'
import { TextArea } from '@/app/_components/ui/text-area'
import { closedDaysText, weekdayNames, type ShopCalendar } from '@/lib/core/shop/open-calendar'
import { calendarSchema } from '@/lib/schemas/shop-calendar'
import { changeCalendarAction } from '../actions'

const options = ([1, 2, 3, 4, 5, 6, 0] as const).map((day) => ({ value: `${day}` as const, label: weekdayNames[day] }))

/** Days of the week on which the shop works, and the days on which it is closed all the same. */
export function CalendarForm({ calendar }: { calendar: ShopCalendar }) {
  const form = useActionForm(calendarSchema, changeCalendarAction, {
    defaultValues: {
      open: options.map(({ value }) => value).filter((day) => calendar.openWeekdays.includes(Number(day))),
      closed: closedDaysText(calendar.closedDays),
    },
  })
  return (
    <ActionForm form={form} submitLabel="Save days">
      <CheckList label="Open on" options={options} {...form.text('open')} />
      <TextArea
        label="Closed on"
        hint="One day or run of days a line: Dec 25, 2026, or Dec 24, 2026 to Jan 1, 2027."
        {...form.text('closed')}
      />
    </ActionForm>
  )
}
