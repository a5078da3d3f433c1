/** Felt through a glove: something was refused, or cannot be. Where the device has no motor, nothing. */
export function buzz(): void {
  if (typeof navigator === 'undefined' || !('vibrate' in navigator)) return
  navigator.vibrate([60, 40, 60])
}
