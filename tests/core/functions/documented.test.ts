import { describe, expect, it } from 'vitest'
import { functionsOf } from './documented'

const folders = [
  'units',
  'chamber',
  'cut',
  'rate',
  'at-mill',
  'clearance',
  'seat',
  'intake',
  'compression',
  'straightness',
  'flow',
  'expected',
  'springs',
  'wanted',
  'valve-sheet',
  'finish',
] as const

/** What says, tells apart or picks out, and works no figure out. */
const noFigure = new Set([
  ...['unitNamed', 'factOf', 'formatFigure', 'withUnit', 'formatBare', 'formatThou', 'parseFigure', 'readNumber'],
  ...['typedFigure', 'unitTyped', 'parseOutline', 'checkOutline', 'crossingEdges', 'checkPlanFacts', 'governingWords'],
  ...['unevenCaution', 'refuseBroken', 'limitCautions', 'allChambers', 'outOfTolerance', 'shareFact', 'cutsLikeDepth'],
  ...[
    'uncertaintyFact',
    'depthErrorFact',
    'rateFacts',
    'isProven',
    'cornersOf',
    'taken',
    'repeatedLift',
    'likeForLike',
  ],
  ...['checkLimits', 'figureKey', 'knownKey', 'expectedLimitsOf', 'isBeforeCut'],
  ...['readAtStep', 'figures', 'ticksOf', 'vendorCuts', 'cutsMade', 'chamberWorks', 'millPoint'],
  ...['isMillPoint', 'betweenHeadFact', 'groupOfReading'],
  ...['isOpenOn', 'sorted'],
  ...['columnOf', 'columnsInUse', 'columnState', 'shimsText'],
])

describe('the comment of a function that works a figure out', () => {
  const figures = folders.flatMap(functionsOf).filter(({ name }) => !noFigure.has(name))
  const lacking = (pattern: RegExp) =>
    figures.filter(({ comment }) => !pattern.test(comment)).map(({ file, name }) => `${file} ${name}`)

  it('says where it comes from: a source, a derivation, a definition or common practice', () => {
    expect(figures.length).toBeGreaterThan(70)
    expect(lacking(/Source:|Sources:|[Dd]erived:|By definition|[Cc]ommon practice/)).toEqual([])
  })

  it('has a worked example', () => {
    expect(lacking(/Example/)).toEqual([])
  })

  it('every name that is let off is a function', () => {
    const names = new Set(folders.flatMap(functionsOf).map(({ name }) => name))
    expect([...noFigure].filter((name) => !names.has(name))).toEqual([])
  })
})
