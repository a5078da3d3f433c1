/** A list of chosen values after one box was ticked or cleared. */
export const toggled = <T extends string>(values: readonly T[], box: { value: string; checked: boolean }): T[] => {
  const rest = values.filter((value) => value !== box.value)
  return box.checked ? [...rest, box.value as T] : rest
}
