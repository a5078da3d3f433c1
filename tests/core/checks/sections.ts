import { atBench } from './at-bench'
import { atMill } from './at-mill'
import { bench } from './bench'
import { chamber } from './chamber'
import type { Section } from './check'
import { clearance, rigidMotion } from './clearance'
import { compression } from './compression'
import { cut } from './cut'
import { expectedFigures, springs } from './expected'
import { flatDecks } from './flat-deck'
import { flow } from './flow'
import { headNow } from './head-now'
import { intake } from './intake'
import { plane, straightness } from './plane'
import { plans } from './plan'
import { rates } from './rate'
import { seat } from './seat'
import { units } from './units'

/** In the order of the shop's mathematics; the number before a title says where. */
export const sections: readonly Section[] = [
  units,
  chamber,
  cut,
  plans,
  rates,
  atMill,
  atBench,
  plane,
  compression,
  rigidMotion,
  intake,
  clearance,
  seat,
  flow,
  straightness,
  bench,
  headNow,
  expectedFigures,
  springs,
  flatDecks,
]
