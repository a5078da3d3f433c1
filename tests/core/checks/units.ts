import { fraction, number, unit } from 'mathjs'
import { must } from '@/lib/core/errors'
import { fromCore, toCore, unitNamed } from '@/lib/core/units/convert'
import {
  ccPerIn3,
  litresPerFt3,
  mm2PerIn2,
  mmPerIn,
  newtonsPerLbf,
  paPerInH2O,
  thouPerIn,
} from '@/lib/core/units/factors'
import { formatBare } from '@/lib/core/units/format-figure'
import { parseFigure } from '@/lib/core/units/parse-figure'
import { quantities, type Quantity, type Unit } from '@/lib/core/units/quantities'
import { asDoubles, check, type Check } from './check'

const unitOf = (quantity: Quantity, name: string): Unit => {
  const found = unitNamed(quantity, name)
  if (!found) throw new Error(`${name} is no unit of ${quantity}`)
  return found
}

const typed = (text: string, quantity: Quantity, source: string, printed: number, fieldUnit?: string): Check =>
  check(
    `“${text}” typed as ${quantities[quantity].label}`,
    source,
    [printed, quantities[quantity].unit, asDoubles(printed)],
    () => must(parseFigure(text, quantity, fieldUnit)).value,
  )

const exact = 'NIST SP 811, appendix B: exact'
const theirs = 'mathjs 15 units'
const fractions = 'mathjs 15 fractions'
const ratio = (text: string): number => number(fraction(text))

const factors: readonly Check[] = [
  check('millimetres in an inch', exact, [25.4, 'mm', 0], () => mmPerIn),
  check('cubic centimetres in a cubic inch', exact, [16.387064, 'cc', 0], () => ccPerIn3),
  check('square millimetres in a square inch', exact, [645.16, 'mm²', 0], () => mm2PerIn2),
  check('litres in a cubic foot', exact, [28.316846592, 'l', 0], () => litresPerFt3),
  check('newtons in a pound-force', exact, [4.4482216152605, 'N', 0], () => newtonsPerLbf),
  check('thou in an inch', 'by its name: a thousandth of an inch', [1000, 'thou', 0], () => thouPerIn),
  check('inch of water', 'NIST SP 811: conventional', [249.0889, 'Pa', 0], () => paPerInH2O),
  check('inch of water, against that of 39.2 °F', 'NIST SP 811: 39.2 °F', [249.082, 'Pa', 0.01], () => paPerInH2O),
  check(
    'inch of water, against that of 60 °F',
    'NIST SP 811: 60 °F; a tenth of a per cent is what a bench cannot tell',
    [248.84, 'Pa', 0.26],
    () => paPerInH2O,
  ),
]

const conversions: readonly Check[] = [
  typed('101.6 mm', 'bore', theirs, unit(101.6, 'mm').toNumber('in')),
  typed('82 mm', 'stroke', theirs, unit(82, 'mm').toNumber('in')),
  typed('18 thou', 'depth', theirs, unit(18, 'mil').toNumber('in')),
  typed('4 in³', 'chamberVolume', theirs, unit(4, 'cuin').toNumber('cc')),
  typed('4 cu. in.', 'chamberVolume', theirs, unit(4, 'cuin').toNumber('cm^3')),
  typed('6500 mm²', 'area', theirs, unit(6500, 'mm^2').toNumber('sqin')),
  typed('65 cm2', 'area', theirs, unit(65, 'cm^2').toNumber('sqin')),
  typed('30 min', 'angle', theirs, unit(30, 'arcmin').toNumber('deg')),
  typed('68 °F', 'temperature', theirs, unit(68, 'degF').toNumber('degC')),
  typed('−40 °F', 'temperature', theirs, unit(-40, 'degF').toNumber('degC')),
  typed('100 l/s', 'flow', theirs, unit(100, 'l/s').toNumber('ft^3/minute')),
  check(
    '“300 kPa” typed as air pressure',
    'NIST SP 811: 1 psi = 6.894757 kPa, seven figures',
    [300 / 6.894757, 'psi', 1e-5],
    () => must(parseFigure('300 kPa', 'airPressure')).value,
  ),
  typed('2 h', 'minutes', theirs, unit(2, 'hour').toNumber('minute')),
  typed('1000 N', 'springForce', theirs, unit(1000, 'N').toNumber('lbf')),
  typed('0.8 µm', 'finish', theirs, unit(0.8, 'um').toNumber('in') * 1e6),
  typed(
    '7 kPa',
    'testPressure',
    'mathjs 15 units, and 249.0889 Pa (NIST SP 811)',
    unit(7, 'kPa').toNumber('Pa') / 249.0889,
  ),
  check('0.25 in shown in millimetres', theirs, [unit(0.25, 'in').toNumber('mm'), 'mm', asDoubles(6)], () =>
    fromCore(0.25, unitOf('depth', 'mm')),
  ),
  check('20 °C shown in °F', theirs, [unit(20, 'degC').toNumber('degF'), '°F', asDoubles(68)], () =>
    fromCore(20, unitOf('temperature', '°F')),
  ),
  check('64 cc shown in cubic inches', theirs, [unit(64, 'cc').toNumber('cuin'), 'in³', asDoubles(4)], () =>
    fromCore(64, unitOf('chamberVolume', 'in³')),
  ),
  check(
    'an atmosphere, 101.325 kPa, in inches of water',
    'handbook: 406.78 inches of water, from memory',
    [406.78, 'inH2O', 0.005],
    () => toCore(101.325, unitOf('testPressure', 'kPa')),
  ),
  check('0.0175 in printed in thou', 'by hand: 0.0175 × 1000', [17.5, 'thou', 0], () =>
    Number(formatBare(0.0175, 'depth', 'thou')),
  ),
]

const asWritten: readonly Check[] = [
  typed('1 7/8', 'bore', fractions, ratio('1 7/8')),
  typed('1-7/8', 'bore', 'mathjs 15 fractions: a hyphen between whole and part', ratio('1 7/8')),
  typed('4 1/32"', 'bore', fractions, ratio('4 1/32')),
  typed('1/64', 'depth', fractions, ratio('1/64')),
  typed('3 / 32', 'depth', fractions, ratio('3/32')),
  typed('−1-7/8 in', 'length', fractions, ratio('-1 7/8')),
  typed('12 1/2 thou', 'depth', 'mathjs 15 fractions and units', unit(ratio('12 1/2'), 'mil').toNumber('in')),
  typed('.3415', 'lift', 'by hand: no nought before the point', 0.3415),
  typed('0,3415', 'lift', 'by hand: one comma and no point is a decimal comma', 0.3415),
  typed('−.010', 'deckClearance', 'by hand: a true minus is a minus', -0.01),
  typed('-.010', 'deckClearance', 'by hand: a hyphen is a minus', -0.01),
  typed('18', 'depth', 'by hand: a bare figure takes the field’s unit, 18/1000', 0.018, 'thou'),
  typed('0.018 in', 'depth', 'by hand: the unit typed wins over the field’s', 0.018, 'thou'),
  typed('6.0 thou per cc', 'thouPerCc', 'by hand', 6),
]

export const units = {
  title: '1. Units and typed figures',
  checks: [...factors, ...conversions, ...asWritten],
}
