import { refuse, ok, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { addDays, daysBetween, isDay, type Day } from '../shop/calendar'
import { horizonDays, offsetAt, openDaysFrom, placeOf, type OpenDays } from './open-days'
import { daysToCome, type Samples } from './samples'
import { drawAt, seedOf } from './seeded'
import type { Finish, FinishInput, FinishStep, FinishWait, Longest } from './types'

const rounds = 200

/**
 * When a head will be ready: its steps in order, each as long as this shop's own last ones took, the queue before it, what
 * it waits for and what is away, played through two hundred times.
 *
 * A step ends at the later of two: the usual time from the step before it, and the end of today's queue at its station with
 * its own work after that. A step waits for its parts; an unanswered question holds up every step after it. Work goes on
 * in open time; a vendor and the customer take calendar days.
 *
 * @param input days in working days of the shop or in calendar days, as its types say; dayPart 0 to 1
 * @returns the middle day and the day by which nine of ten rounds are done (nearest rank), never before today, never on a
 *   closed day; what took the most time on the mean of the rounds
 *
 * Example: a Monday morning, Monday to Friday, two steps of 2 and 1.5 days → 3.5 working days → Thursday. Derived: a
 * simulation from the empirical distributions; the draws of its own steps and waits hang on the head alone, those of a
 * queue on its station.
 */
export function expectedFinish(input: FinishInput): Result<Finish> {
  const known = knownFacts({
    dayPart: ['share of today that has passed', input.dayPart, 0, 1],
    elapsedDays: ['days at this step', input.elapsedDays, 0, 10_000],
    openWeekdays: ['working days of the week', input.calendar.openWeekdays.length, 1, 7],
  })
  if (!known.ok) return known
  if (!isDay(input.today)) return refuse('unreadable', 'Today is not a day of the calendar.')
  const open = openDaysFrom(input.today, input.calendar)
  if (open.offsets.length === 0) return refuse('unreachable', 'The shop is closed for two years.')
  const took = input.steps.map(() => 0)
  const queued = input.steps.map(() => 0)
  const waited = input.waits.map(() => 0)
  const days = playRounds(input, open, { took, queued, waited })
  const nearest = (share: number): Day => addDays(input.today, days[Math.ceil(share * rounds) - 1] ?? 0)
  return ok({
    middleOn: nearest(0.5),
    nineOfTenOn: nearest(0.9),
    longest: longestOf(input, { took, queued, waited }),
    from: whereFrom(input),
  })
}

/** Days that each thing took, summed over all rounds. */
type Taken = { readonly took: number[]; readonly queued: number[]; readonly waited: number[] }

const add = (sums: number[], number: number, days: number): void => {
  sums[number] = (sums[number] ?? 0) + days
}

/** Of one round: a number between 0 and 1 for each thing that is drawn. */
type Draw = (what: number, number: number) => number
const draws = { step: 0, service: 1, wait: 2 } as const
const mostOfOneKind = 4096

type Round = {
  readonly input: FinishInput
  readonly open: OpenDays
  readonly number: number
  readonly draw: Draw
  readonly taken: Taken
}

function playRounds(input: FinishInput, open: OpenDays, taken: Taken): number[] {
  const seed = seedOf(input.seed)
  const days: number[] = []
  for (let round = 0; round < rounds; round++) {
    const draw: Draw = (what, number) => drawAt(seed, round, what * mostOfOneKind + number)
    days.push(offsetAt(open, playOnce({ input, open, number: round, draw, taken })))
  }
  return days.sort((a, b) => a - b)
}

/** Now, in open time. */
const startOf = ({ input, open }: Round): number => (open.offsets[0] === 0 ? input.dayPart : 0)

/** One round: the place in open time at which the head is ready. */
function playOnce(round: Round): number {
  const { steps } = round.input
  const last = steps.reduce((place, step, number) => {
    const from = afterWaits(round, place, number)
    return step.at === 'vendor' ? afterVendor(round, step, from, number) : afterStep(round, step, from, number)
  }, startOf(round))
  return afterWaits(round, last, steps.length)
}

type Here = Extract<FinishStep, { at: 'here' }>
type AtVendor = Extract<FinishStep, { at: 'vendor' }>

function afterStep(round: Round, step: Here, place: number, number: number): number {
  const { input, draw, taken } = round
  const usual = daysToCome(step.took.days, draw(draws.step, number), number === 0 ? input.elapsedDays : 0)
  const queue = step.station === null ? undefined : input.queues[step.station]
  const end = queue && queue.heads > 0 ? startOf(round) + queue.times.together(round.number, queue.heads) : 0
  const own = queue && end > place ? daysToCome(queue.times.each.days, draw(draws.service, number), 0) : 0
  const done = Math.max(place + usual, end > place ? end + own : place)
  add(taken.took, number, usual)
  add(taken.queued, number, done - place - usual)
  return done
}

function afterVendor({ input, open, draw, taken }: Round, step: AtVendor, place: number, number: number): number {
  const sent = offsetAt(open, place)
  const back = backFromVendor(step, sent, draw(draws.step, number), input.today)
  add(taken.took, number, Math.max(0, back - sent))
  return Math.max(place, placeOf(open, back))
}

/** From the place at which it could go on to the one at which what this step waits for is here. */
function afterWaits({ input, open, draw, taken }: Round, place: number, step: number): number {
  let at = place
  input.waits.forEach((wait, number) => {
    if (wait.beforeStep !== step) return
    const until = placeOf(open, arrivalOf(wait, draw(draws.wait, number), input.today))
    add(taken.waited, number, Math.max(0, until - place))
    at = Math.max(at, until)
  })
  return at
}

/** Offset of the day on which it is back: as long as this vendor takes, not before the day it said. */
function backFromVendor(step: AtVendor, offset: number, u: number, today: Day): number {
  const out = step.daysOut
  const back = out === null ? offset + daysToCome(step.took.days, u, 0) : daysToCome(step.took.days, u, out)
  return Math.min(horizonDays, Math.max(Math.ceil(back), promised(step.promisedOn, today)))
}

/** Parts come as promised; where nobody promised a day, or it has passed, as such waits usually last. */
function arrivalOf({ took, elapsedDays, promisedOn }: FinishWait, u: number, today: Day): number {
  const said = promised(promisedOn, today)
  return Math.min(
    horizonDays,
    promisedOn !== null && said >= 0 ? said : Math.ceil(daysToCome(took.days, u, elapsedDays)),
  )
}

const promised = (day: Day | null, today: Day): number => (day !== null && isDay(day) ? daysBetween(today, day) : -1)

function longestOf({ steps, waits, queues }: FinishInput, { took, queued, waited }: Taken): Longest {
  const days = (sum: number | undefined) => Math.round(((sum ?? 0) / rounds) * 10) / 10
  const found: Longest[] = [
    ...steps.map((step, number): Longest =>
      step.at === 'vendor'
        ? { code: 'vendor', vendor: step.vendor, days: days(took[number]) }
        : { code: 'step', stepId: step.stepId, days: days(took[number]) },
    ),
    ...steps.flatMap((step, number): Longest[] =>
      step.at === 'vendor' || step.station === null
        ? []
        : [
            {
              code: 'queue',
              station: step.station,
              heads: queues[step.station]?.heads ?? 0,
              days: days(queued[number]),
            },
          ],
    ),
    ...waits.map(({ code, what }, number): Longest => ({ code, what, days: days(waited[number]) })),
  ]
  return found.reduce((most, one) => (daysOf(one) > daysOf(most) ? one : most), { code: 'none' } as Longest)
}

const daysOf = (one: Longest): number => (one.code === 'none' ? 0 : one.days)

function whereFrom({ steps, waits }: FinishInput): Finish['from'] {
  const drawn = [
    ...steps.map(({ took }) => took),
    ...waits.filter(({ promisedOn }) => promisedOn === null).map(({ took }) => took),
  ]
  if (drawn.every(isOwn)) return 'own'
  return drawn.some(isOwn) ? 'both' : 'settings'
}

const isOwn = ({ own }: Samples): boolean => own
