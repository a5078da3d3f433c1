import { ok, refuse, type Result } from '../errors'
import { formatFigure } from '../units/format-figure'
import { parseFigure } from '../units/parse-figure'
import { expectedSettingGroups } from './expected-setting-fields'
import type { Quantity } from '../units/quantities'
import {
  angle,
  cc,
  days,
  depth,
  field,
  noLessThan,
  noMoreThan,
  perCent,
  type SettingField,
  type SettingGroup,
  type SettingKind,
} from './setting-kind'

export type { SettingField, SettingKey } from './setting-kind'

/** Every setting, once, in the order of the page. */
export const settingGroups: readonly SettingGroup[] = [
  {
    title: 'Chambers',
    fields: [
      field('ccToleranceCc', 'Tolerance on the target', cc(0.05, 10), 'Each finished chamber, either way.'),
      field('ccMatchCc', 'Match within a pair', cc(0.05, 10), 'Each chamber against the mean of the pair.'),
      field(
        'ccRepeatabilityCc',
        'Spread of one reading',
        cc(0.01, 5),
        'One standard deviation, where a chamber was read once.',
      ),
      field('buretteDivisionCc', 'Burette division', cc(0.01, 5)),
    ],
  },
  {
    title: 'Cutting',
    fields: [
      field('depthSettingErrorThou', 'Error of setting the depth', {
        unit: 'thou',
        scale: 1,
        least: 0.1,
        most: 10,
      }),
      field('checkCcDeeperThanIn', 'Read cc on the way when a flat cut is deeper than', depth),
      field(
        'secondCheckDeeperThanIn',
        'Second check before a cut deeper than',
        depth,
        'Another person reads one chamber and confirms plan and head first. 0: no second check.',
      ),
      field('cornersLimitIn', 'Four corners at the end when more is cut than', noMoreThan(0.06)),
      field(
        'betweenHeadPart',
        'Spread of the rate between heads',
        perCent(25),
        'One standard deviation, in per cent of the rate.',
      ),
      field('vendorMarginCc', 'Left for us by a vendor', cc(0.1, 20), 'So that the last cut lands on size in house.'),
      field(
        'cutToleranceIn',
        'Tolerance of a cut',
        depth,
        'Flat part and angle part as measured, against the plan and against a vendor’s marks.',
      ),
      field('angleCautionDeg', 'Caution above an angle of', angle),
      field('angleLimitDeg', 'Largest angle', angle, 'Where the casting record has none of its own.'),
    ],
  },
  {
    title: 'What follows a cut',
    fields: [
      field('cleanUpSeatLimitIn', 'Seat check after a clean-up deeper than', noMoreThan(0.03)),
      field('boltReachLimitIn', 'Bolt reach when more is gone than', noMoreThan(0.06), 'From new, all visits.'),
      field('dowelLimitIn', 'Dowel fit when more is removed than', noMoreThan(0.06), 'From new, all visits.'),
      field('rockerLimitIn', 'Rocker and pushrod when more is cut than', noMoreThan(0.1)),
      field('intakeLimitIn', 'Intake side when it comes to more than', noMoreThan(0.06)),
      field('ptvLossLimitIn', 'Piston-to-valve check when more is lost than', noMoreThan(0.06)),
      field('ptvRemainingLimitIn', 'Piston-to-valve check when less is left than', noLessThan(0.04)),
      field('sealingMarginIn', 'Minimum margin of the valve’s sealing line', noLessThan(0.001)),
    ],
  },
  {
    title: 'Straightness and pairs',
    fields: [
      field('straightAcrossIn', 'Straight across', depth, 'The gasket maker’s figure comes first.'),
      field('straightAlongPerCylinderIn', 'Straight along, each cylinder', depth),
      field('pairThicknessIn', 'Thickness within a pair', depth),
    ],
  },
  {
    title: 'Minimum piston-to-valve clearance',
    fields: [
      field(
        'ptvLeastIntakeIn',
        'Intake',
        depth,
        'Customary 0.080 to 0.100; the engine and cam makers’ figures come first.',
      ),
      field('ptvLeastExhaustIn', 'Exhaust', depth, 'Customary 0.100; the engine and cam makers’ figures come first.'),
    ],
  },
  {
    title: 'Flow bench',
    fields: [
      field(
        'flowRepeatabilityPart',
        'Repeatability of the bench',
        perCent(10),
        'One standard deviation of a single run.',
      ),
    ],
  },
  {
    title: 'When a head is ready, until the shop’s own record says',
    fields: [
      field('turnaroundDays', 'Days at a vendor', days(1, 365), 'Calendar days, freight in.'),
      field('stepDays', 'Working days of one step', days(0.05, 20), 'With the wait before it.'),
      field('answerDays', 'Days until a customer answers', days(0.5, 60), 'Calendar days.'),
      field('partsDays', 'Days until parts come', days(0.5, 365), 'Where nobody promised a day.'),
      field('holdDays', 'Days on hold', days(0.5, 60), 'Until somebody decides.'),
    ],
  },
  ...expectedSettingGroups,
  {
    title: 'Tablets',
    fields: [
      field(
        'tabletIdleMinutes',
        'Signed out when not touched for',
        { unit: 'min', scale: 1, least: 1, most: 60 },
        'Holds from the next PIN on. Half-typed work waits for its person.',
      ),
    ],
  },
]

export const settingFields: readonly SettingField[] = settingGroups.flatMap((group) => group.fields)

const significant = (value: number): number => Number(value.toPrecision(12))

/** What stands in the field: "0.5", "0.0200"; in per cent for a share. */
export const settingText = ({ kind }: SettingField, value: number): string =>
  'quantity' in kind ? String(value) : String(significant(value / kind.scale))

/** As it is read out on a page: "0.0200 in", "3 %". */
export const settingWords = (field: SettingField, value: number): string =>
  'quantity' in field.kind
    ? formatFigure(value, field.kind.quantity)
    : `${settingText(field, value)} ${field.kind.unit}`

/** What is read from the field, in the core's unit. Example: "3 %" of the rate's spread → 0.03. */
export function parseSetting({ kind, label }: SettingField, text: string): Result<number> {
  if ('quantity' in kind) {
    const figure = parseFigure(text, kind.quantity)
    return figure.ok ? heldWithin(kind, label, figure.value.value) : figure
  }
  const typed = text.trim().toLowerCase()
  const bare = typed.endsWith(kind.unit) ? typed.slice(0, -kind.unit.length).trim() : typed
  if (!/^\d{1,4}([.,]\d{1,4})?$/.test(bare)) return refuse('unreadable', `Type a number in ${kind.unit}.`)
  const number = Number(bare.replace(',', '.'))
  if (number < kind.least || number > kind.most) {
    return refuse('out-of-range', `${label}: ${kind.least} to ${kind.most} ${kind.unit}.`)
  }
  return ok(significant(number * kind.scale))
}

function heldWithin({ quantity, within }: Extract<SettingKind, { quantity: Quantity }>, label: string, value: number) {
  if (within === undefined || (value >= within[0] && value <= within[1])) return ok(value)
  const [least, most] = within.map((end) => formatFigure(end, quantity))
  return refuse(
    'out-of-range',
    `${label}: ${least} to ${most}. Outside that a head could leave without a check it needs.`,
  )
}
