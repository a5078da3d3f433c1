import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, expect, it } from 'vitest'
import type { Actor } from '@/lib/core/access/roles'
import { RefusedError } from '@/lib/core/errors'
import { testDatabase } from '../setup/database'
import { monday, openShop } from './jobs/counter-shop'

/**
 * Every use case that somebody signed in can call, and who gets past its first line: c counter, m machinist, o owner, +
 * and a grant. Written from what each person does in the shop, not from the table of rights: the counter never touches
 * what the bench measured, a machinist sees no prices and no customers, what makes the shop what it is is the owner's. A
 * use case that is not listed here fails the test.
 */
const may: Readonly<Record<string, string>> = {
  ...whoMay('cmo', [
    'acceptOrder',
    'addPhoto',
    'changeOrder',
    'chooseMarks',
    'confirmOutside',
    'endWait',
    'findAnything',
    'findCastings',
    'findVendors',
    'findHeads',
    'headOfTag',
    'seeOpenStep',
    'keepEstimate',
    'leaveMargin',
    'makePlanVersion',
    'openHold',
    'openWait',
    'setRackPlace',
    'printEstimate',
    'printJobSheet',
    'printLabelsOfTags',
    'printOutsideSheet',
    'printSpecSheet',
    'printTagLabels',
    'receiveOutside',
    'receiveSupply',
    'rejectOutside',
    'reportFinding',
    'repromise',
    'seeAccount',
    'changeOwnPassword',
    'confirmPassword',
    'endASession',
    'startFactor',
    'confirmFactor',
    'renewCodes',
    'dropOwnFactor',
    'seeArriving',
    'seeAway',
    'seeBench',
    'seeBenchCasting',
    'seeCasting',
    'seeCastings',
    'seeCounter',
    'seeEstimate',
    'seeFindingPhotos',
    'seeFlow',
    'seeFlowStep',
    'seeHead',
    'seeHeadPhotos',
    'seeJob',
    'seeLabelHeads',
    'seeLeftStep',
    'seeOrder',
    'seeOrderPhotos',
    'seePicture',
    'seePlan',
    'seeQueue',
    'seeRates',
    'seeReferences',
    'seeSending',
    'seeStationNames',
    'seeStation',
    'seeStations',
    'seeStep',
    'seeSupply',
    'seeVisitPhotos',
    'sendOutside',
    'withdrawPhoto',
  ]),
  ...whoMay('o', [
    'undoHandOver',
    'addCasting',
    'addInstrument',
    'addPerson',
    'addPriceItem',
    'addTaxRate',
    'addVendor',
    'applyRules',
    'changeTaxRate',
    'exportBooks',
    'seeBackups',
    'takeEverything',
    'exportHasCome',
    'startBackup',
    'seeBackupLine',
    'backupHealth',
    'exportCustomers',
    'blankCustomer',
    'undoMerge',
    'seeBooks',
    'retireTaxRate',
    'changeCasting',
    'changeCastingWanted',
    'changeShopWanted',
    'changeInstrument',
    'changePerson',
    'changePriceItem',
    'changeRules',
    'changeRulesSeen',
    'changeSettings',
    'changeShop',
    'changeMailServer',
    'seeMailServer',
    'sendTestMail',
    'changeTablet',
    'changeText',
    'changeVendor',
    'chooseLogo',
    'clearPin',
    'decideHold',
    'makeTabletCode',
    'removeLogo',
    'retireCasting',
    'restoreRules',
    'ruleOnCut',
    'retirePerson',
    'retirePriceItem',
    'retireVendor',
    'revokeTablet',
    'seeBackRoom',
    'seeEnrolling',
    'seeInstrument',
    'seeInstruments',
    'seeLogo',
    'seePeople',
    'seePerson',
    'seeRules',
    'seeRulesPreview',
    'seeSettings',
    'seeShop',
    'seeTablet',
    'seeTablets',
    'seeText',
    'seeTexts',
    'seeTrail',
    'seeVendor',
    'seeVendors',
    'makeResetLink',
    'seeWaits',
    'liftPersonWaits',
    'clearFactor',
    'setCalendar',
    'setValveLists',
  ]),
  ...whoMay('co', [
    'acceptPlan',
    'addDiscount',
    'addPriceLine',
    'changePriceLine',
    'printMoneyPaper',
    'seeInvoice',
    'seeTaxPicks',
    'seeTaxRate',
    'seeTaxRates',
    'seeUnpaid',
    'voidPayment',
    'writeCreditNote',
    'writeInvoice',
    'answerFinding',
    'askFinding',
    'printClaimTicket',
    'addHead',
    'cancelJob',
    'changeAnswer',
    'startBookingAgain',
    'startBookingFor',
    'startBookingFromBench',
    'startComeback',
    'takeOffHead',
    'startBookingFromEstimate',
    'bookJob',
    'changeEngine',
    'changeHeadWanted',
    'changeJob',
    'changeJobWanted',
    'changeOrderedWork',
    'changeTag',
    'endPriceLine',
    'endSupply',
    'seeAlike',
    'seeCustomer',
    'seeCustomers',
    'changeCustomer',
    'mergeCustomers',
    'previewImport',
    'importCustomers',
    'findCustomers',
    'findPrices',
    'handOver',
    'logCall',
    'callInstead',
    'logMessage',
    'seeMailTrouble',
    'tryMailAgain',
    'prepareMessage',
    'seeMessages',
    'sendMessage',
    'makeCustomerLink',
    'noteOutsideCost',
    'orderSupply',
    'printHandOverSlip',
    'proposePromise',
    'repromiseSupply',
    'returnAsIs',
    'revokeCustomerLink',
    'seeBooking',
    'seeFinding',
    'seeHandOver',
    'seeLinks',
    'seeOrdering',
    'seePriceItem',
    'seePriceList',
    'takeOffTag',
    'takePayment',
  ]),
  ...whoMay('mo', [
    'correctReading',
    'correctReference',
    'recordReference',
    'secondCheck',
    'setCornerInset',
    'setOwnPin',
  ]),
  ...whoMay('o+release', ['releaseVisit']),
  ...whoMay('o+waive', ['waiveGap']),
}

/** By the station of the step: `tests/use-cases/visits/step-deeds.test.ts` and the browser's journey. */
const byStation = ['recordReadings', 'startStep', 'tickStep', 'undoTick']
/** Parts of a use case, called after the right was asked for. */
const parts = ['mayWithdraw', 'releaseDraft']
/** A person their own, the owner anybody's: `tests/use-cases/people/own-sign-in.test.ts`. */
const byWhose = ['seeSessions']

const people: Readonly<Record<string, Actor>> = Object.fromEntries(
  (
    [
      ['nobody', [], []],
      ['c', ['counter'], []],
      ['m', ['machinist'], []],
      ['o', ['owner'], []],
      ['release', [], ['release']],
      ['waive', [], ['waive']],
    ] as const
  ).map(([who, roles, grants]) => [who, { personId: who, name: 'Somebody', roles, grants }]),
)

type Deed = (actor: Actor, ...rest: readonly unknown[]) => Promise<unknown>
const root = join(import.meta.dirname, '..', '..', 'lib', 'use-cases')
const takesAnActor = /^(?:async )?(?:function \w+)?\s*\(actor\b/

async function everyDeed(): Promise<Map<string, Deed>> {
  const deeds = new Map<string, Deed>()
  for (const file of readdirSync(root, { recursive: true, encoding: 'utf8' }).filter((one) => one.endsWith('.ts'))) {
    const exported = (await import(join(root, file))) as Readonly<Record<string, unknown>>
    for (const [name, value] of Object.entries(exported)) {
      if (typeof value === 'function' && takesAnActor.test(String(value))) deeds.set(name, value as Deed)
    }
  }
  return deeds
}

/** What is asked for is nonsense: whoever is let in gets another error, or nothing, and nothing is changed by it. */
async function isRefused(deed: Deed, actor: Actor): Promise<boolean> {
  try {
    await deed(actor, {}, { now: monday }, {})
    return false
  } catch (error) {
    return error instanceof RefusedError && error.refusal.code === 'not-allowed'
  }
}

let deeds: Map<string, Deed>
beforeAll(async () => {
  deeds = await everyDeed()
  await openShop(await testDatabase())
}, 120_000)

it('every use case that takes a person is listed, and no other', () => {
  const listed = [...Object.keys(may), ...byStation, ...parts, ...byWhose]
  expect([...deeds.keys()].sort()).toEqual(listed.sort())
})

it.each(Object.entries(may))('%s: %s', async (name, who) => {
  const deed = deeds.get(name)
  if (!deed) throw new Error(`There is no ${name}.`)
  const letIn: string[] = []
  for (const [one, actor] of Object.entries(people)) if (!(await isRefused(deed, actor))) letIn.push(one)
  const [roles = '', grant] = who.split('+')
  expect(letIn).toEqual([...roles, ...(grant === undefined ? [] : [grant])])
})

function whoMay(who: string, names: readonly string[]): Record<string, string> {
  return Object.fromEntries(names.map((name) => [name, who]))
}
