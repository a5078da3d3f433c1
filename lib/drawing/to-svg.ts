import type { Drawing, Mark, PathMark, TextMark, Tone } from './marks'

/** One SVG element, with attributes named as React names them: a component maps the list and needs no HTML strings. */
export type SvgElement = {
  readonly tag: 'path' | 'text'
  readonly attrs: Readonly<Record<string, string | number>>
  /** The words of a text element. */
  readonly text?: string
}

export type SvgDrawing = {
  readonly viewBox: string
  readonly widthMm: number
  readonly heightMm: number
  readonly title: string
  readonly description: string
  readonly elements: readonly SvgElement[]
}

const customProperties: Readonly<Record<Tone, string>> = {
  ink: 'var(--ink)',
  faint: 'var(--line-strong)',
  brass: 'var(--brass)',
  'on-brass': 'var(--on-brass)',
  stop: 'var(--stop)',
  ground: 'var(--ground)',
}

const faces = { text: 'var(--face)', figure: 'var(--face-figure)' } as const

/** The drawing as SVG elements; colours are the page's custom properties unless others are given. */
export function toSvg(drawing: Drawing, colours: Readonly<Record<Tone, string>> = customProperties): SvgDrawing {
  const { widthMm, heightMm, title, description } = drawing
  return {
    viewBox: `0 0 ${widthMm} ${heightMm}`,
    widthMm,
    heightMm,
    title,
    description,
    elements: drawing.marks.map((mark) => element(mark, colours)),
  }
}

const element = (mark: Mark, colours: Readonly<Record<Tone, string>>): SvgElement =>
  mark.kind === 'path' ? pathElement(mark, colours) : textElement(mark, colours)

function pathElement({ d, fill, stroke }: PathMark, colours: Readonly<Record<Tone, string>>): SvgElement {
  return {
    tag: 'path',
    attrs: {
      d,
      fill: fill === null ? 'none' : colours[fill],
      ...(stroke && { stroke: colours[stroke.tone], strokeWidth: stroke.widthMm, strokeLinejoin: 'round' }),
      ...(stroke?.dashMm && { strokeDasharray: stroke.dashMm.join(' ') }),
    },
  }
}

function textElement(mark: TextMark, colours: Readonly<Record<Tone, string>>): SvgElement {
  return {
    tag: 'text',
    attrs: {
      x: mark.x,
      y: mark.y,
      fontSize: mark.sizeMm,
      textAnchor: mark.anchor,
      fill: colours[mark.tone],
      fontFamily: faces[mark.face],
      fontWeight: mark.bold ? 600 : 400,
      ...(mark.turnDeg !== 0 && { transform: `rotate(${mark.turnDeg} ${mark.x} ${mark.y})` }),
    },
    text: mark.text,
  }
}
