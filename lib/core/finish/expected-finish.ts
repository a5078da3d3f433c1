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

const draws = { step: 0, service: 1, wait: 2 } as const
const mostOfOneKind = 4096

/** All rounds of a head are played side by side, one step after the other: a counter has two hundred of a hundred heads. */
type Game = {
  readonly input: FinishInput
  readonly open: OpenDays
  /** Now, in open time. */
  readonly start: number
  /** Of each round: the place in open time at which the head is so far. */
  readonly places: Float64Array
  /** Between 0 and 1, for each thing that is drawn in a round. */
  readonly draw: (round: number, what: number, number: number) => number
  readonly taken: Taken
}

function playRounds(input: FinishInput, open: OpenDays, taken: Taken): number[] {
  const seed = seedOf(input.seed)
  const start = open.offsets[0] === 0 ? input.dayPart : 0
  const game: Game = {
    ...{ input, open, taken, start },
    places: new Float64Array(rounds).fill(start),
    draw: (round, what, number) => drawAt(seed, round, what * mostOfOneKind + number),
  }
  input.steps.forEach((step, number) => {
    waitBefore(game, number)
    if (step.at === 'vendor') goToVendor(game, step, number)
    else doHere(game, step, number)
  })
  waitBefore(game, input.steps.length)
  return Array.from(game.places, (place) => offsetAt(open, place)).sort((a, b) => a - b)
}

type Here = Extract<FinishStep, { at: 'here' }>
type AtVendor = Extract<FinishStep, { at: 'vendor' }>

function doHere({ input, start, places, draw, taken }: Game, { station, took }: Here, number: number): void {
  const elapsedDays = number === 0 ? input.elapsedDays : 0
  const queue = station === null ? undefined : input.queues[station]
  const [heads, times] = queue && queue.heads > 0 ? [queue.heads, queue.times] : [0, null]
  let [usualSum, queuedSum] = [0, 0]
  for (let round = 0; round < rounds; round++) {
    const place = places[round] ?? 0
    const usual = daysToCome(took.days, draw(round, draws.step, number), elapsedDays)
    const end = times ? start + times.together(round, heads) : 0
    const own = times && end > place ? daysToCome(times.each.days, draw(round, draws.service, number), 0) : 0
    const done = Math.max(place + usual, end > place ? end + own : place)
    usualSum += usual
    queuedSum += done - place - usual
    places[round] = done
  }
  taken.took[number] = usualSum
  taken.queued[number] = queuedSum
}

/** As long as this vendor takes, not before the day it said. */
function goToVendor({ input, open, places, draw, taken }: Game, step: AtVendor, number: number): void {
  const said = promised(step.promisedOn, input.today)
  const { daysOut: out, took } = step
  let sum = 0
  for (let round = 0; round < rounds; round++) {
    const place = places[round] ?? 0
    const sent = offsetAt(open, place)
    const u = draw(round, draws.step, number)
    const days = out === null ? sent + daysToCome(took.days, u, 0) : daysToCome(took.days, u, out)
    const back = Math.min(horizonDays, Math.max(Math.ceil(days), said))
    sum += Math.max(0, back - sent)
    places[round] = Math.max(place, placeOf(open, back))
  }
  taken.took[number] = sum
}

/** What a step waits for lasts together: each from the place at which it could go on, and the last is waited for. */
function waitBefore({ input, open, places, draw, taken }: Game, step: number): void {
  const waits = input.waits.flatMap((wait, number) => (wait.beforeStep === step ? [{ wait, number }] : []))
  if (waits.length === 0) return
  for (let round = 0; round < rounds; round++) {
    const place = places[round] ?? 0
    for (const { wait, number } of waits) {
      const until = placeOf(open, arrivalOf(wait, draw(round, draws.wait, number), input.today))
      taken.waited[number] = (taken.waited[number] ?? 0) + Math.max(0, until - place)
      places[round] = Math.max(places[round] ?? 0, until)
    }
  }
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
