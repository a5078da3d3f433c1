import type { Actor } from '@/lib/core/access/roles'
import { addDays, dayIn } from '@/lib/core/shop/calendar'
import { personBySignIn } from '@/lib/data/people'
import { actorOf } from '@/lib/data/sessions'
import { addInstrumentSchema, ownerSchema, shopFactsSchema } from '@/lib/schemas/shop'
import { addPersonSchema, setOwnPinSchema } from '@/lib/schemas/person'
import { addPerson } from '@/lib/use-cases/people/add-person'
import { setOwnPin } from '@/lib/use-cases/people/set-own-pin'
import { addInstrument } from '@/lib/use-cases/shop/add-instrument'
import { openShop } from '@/lib/use-cases/shop/open-shop'
import { demoOwner, demoPassword, demoPeople, type DemoSignIn } from './people'

export const demoShop = shopFactsSchema.parse({
  name: 'Quennell Head Works',
  address: '14 Foundry Row\nDunmarrow',
  phone: '555-0142',
  timeZone: 'America/Chicago',
  locale: 'en-US',
  currency: 'USD',
  paper: 'letter',
})

/** Who acts in the demo, by sign-in name. */
export type DemoStaff = Readonly<Record<DemoSignIn, Actor>>

/** The shop and its people. */
export async function seedShop(now: Date): Promise<DemoStaff> {
  const owner = ownerSchema.parse({ ...demoOwner, password: demoPassword })
  const orla = await openShop({ shop: demoShop, owner, mode: 'demo' }, { now })
  for (const person of demoPeople.filter(({ signIn }) => signIn !== demoOwner.signIn)) {
    await addPerson(orla, addPersonSchema.parse({ ...person, password: demoPassword }), { now })
  }
  const staff = await demoStaff()
  for (const { signIn, pin } of demoPeople) {
    if (pin === null) continue
    const input = setOwnPinSchema.parse({ password: demoPassword, pin, again: pin })
    await setOwnPin(staff[signIn], input, { now })
  }
  return staff
}

/** Those who act in the demo, from a shop that has been filled. */
export async function demoStaff(): Promise<DemoStaff> {
  const actor = async (signIn: string): Promise<Actor> => {
    const person = await personBySignIn(signIn)
    if (!person) throw new Error(`The demo has nobody who signs in as ${signIn}.`)
    return actorOf(person)
  }
  return {
    orla: await actor('orla'),
    tamsin: await actor('tamsin'),
    dov: await actor('dov'),
    ines: await actor('ines'),
    bram: await actor('bram'),
  }
}

/** Checked so many days before now, due again so many days after. One is overdue, so that the warning can be seen. */
const instruments = {
  burette: { name: 'Burette 1, 100 cc in 0.2', kind: 'burette', checked: 41, due: 324 },
  depthGauge: { name: 'Depth gauge 2', kind: 'gauge', checked: 63, due: 120 },
  micrometer: { name: 'Deck micrometer, 3 to 6 in', kind: 'gauge', checked: 190, due: -7 },
  straightedge: { name: 'Straightedge and feelers', kind: 'gauge', checked: 88, due: 277 },
  flowBench: { name: 'Flow bench with test plate A', kind: 'flow bench', checked: 12, due: 18 },
} as const

export type DemoInstruments = Readonly<Record<keyof typeof instruments, string>>

/** Ids by what they are. */
export async function seedInstruments(actor: Actor, now: Date): Promise<DemoInstruments> {
  const today = dayIn(demoShop.timeZone, now)
  const add = async (key: keyof DemoInstruments): Promise<string> => {
    const { name, kind, checked, due } = instruments[key]
    const days = { lastCheckedOn: addDays(today, -checked), dueOn: addDays(today, due) }
    const input = addInstrumentSchema.parse({ name, kind, ...days })
    return (await addInstrument(actor, input, { now })).instrumentId
  }
  return {
    burette: await add('burette'),
    depthGauge: await add('depthGauge'),
    micrometer: await add('micrometer'),
    straightedge: await add('straightedge'),
    flowBench: await add('flowBench'),
  }
}
