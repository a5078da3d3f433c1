import { addDays, dayIn, type Day } from '@/lib/core/shop/calendar'
import { dateFormat } from '@/lib/core/shop/formats'

const minuteMs = 60_000
const opens = '08:00'
const closesAtMinute = 17 * 60

const isWeekend = (day: Day): boolean => [0, 6].includes(new Date(`${day}T00:00:00Z`).getUTCDay())

/** So many working days from a day; below zero: before it. 0 is the day itself, whatever it is. */
export function workingDay(from: Day, days: number): Day {
  let day = from
  for (let left = Math.abs(days); left > 0;) {
    day = addDays(day, Math.sign(days))
    if (!isWeekend(day)) left -= 1
  }
  return day
}

/** Minutes since midnight on the shop's wall. */
function minuteOfDay(zone: string, at: Date): number {
  const parts = dateFormat('en-GB', {
    timeZone: zone,
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  })
  const [hours = '0', minutes = '0'] = parts.format(at).split(':')
  return Number(hours) * 60 + Number(minutes)
}

/** The moment when the shop's clock shows this time on this day. */
export function shopTime(zone: string, day: Day, time: string): Date {
  const [hours = '0', minutes = '0'] = time.split(':')
  const wanted = Date.parse(`${day}T00:00:00Z`) + (Number(hours) * 60 + Number(minutes)) * minuteMs
  const shown = (at: number): number =>
    Date.parse(`${dayIn(zone, new Date(at))}T00:00:00Z`) + minuteOfDay(zone, new Date(at)) * minuteMs
  const first = wanted + (wanted - shown(wanted))
  return new Date(first + (wanted - shown(first))) // once more: the offset may differ on the other side of a change
}

/**
 * The shop's clock while work is told from long ago until now: it goes forward, stops for the night and the weekend, and
 * never passes `until`.
 */
export class ShopClock {
  #at = new Date(0)

  constructor(
    readonly zone: string,
    readonly until: Date,
  ) {}

  get now(): Date {
    return this.#at
  }

  get today(): Day {
    return dayIn(this.zone, this.until)
  }

  /** A working day counted from today. */
  day(days: number): Day {
    return workingDay(this.today, days)
  }

  /** So many working days ago, at this time on the wall. */
  ago(days: number, time: string): Date {
    return shopTime(this.zone, this.day(-days), time)
  }

  minutesAgo(minutes: number): Date {
    return new Date(this.until.getTime() - minutes * minuteMs)
  }

  /** On to a time, but not back before what has been told already. */
  goTo(at: Date): void {
    this.#set(at)
  }

  /** Work took so long; what would end after closing ends next morning. */
  pass(minutes: number): Date {
    const at = new Date(this.#at.getTime() + minutes * minuteMs)
    const late = minuteOfDay(this.zone, at) >= closesAtMinute || isWeekend(dayIn(this.zone, at))
    const next = late ? shopTime(this.zone, workingDay(dayIn(this.zone, this.#at), 1), opens) : at
    // Whoever works on this evening stays until he is done.
    this.#set(next > this.until ? at : next)
    return this.#at
  }

  #set(at: Date): void {
    this.#at = new Date(Math.min(Math.max(at.getTime(), this.#at.getTime()), this.until.getTime()))
  }
}
