const halfInch = { value: 0.5, text: '0.5', unit: 'in' }

/** Where the invented shop touches the corners of a head. */
export const demoCorners = { edge: halfInch, end: halfInch }
