import { isObject } from '../../plan/same-value.ts'

export type Path = readonly (string | number)[]

/** As a refusal writes a place: `checks[3].limits.aim`. */
export const pathText = (path: Path): string => path.reduce<string>((text, key) => (typeof key === 'number' ? `${text}[${key}]` : text ? `${text}.${key}` : key), '')

export const pathOf = (text: string): (string | number)[] => [...text.matchAll(/\[(\d+)\]|([^.[\]]+)/g)].map(([, index, name]) => (index === undefined ? name! : Number(index)))

export const valueAt = (thing: unknown, path: Path): unknown => path.reduce<unknown>((at, key) => (isObject(at) || Array.isArray(at) ? (at as Record<string | number, unknown>)[key] : undefined), thing)

/** The same thing with one value changed; a value that is `undefined` is taken out. */
export const withValue = <T>(thing: T, path: Path, value: unknown): T => {
  const [key, ...rest] = path
  if (key === undefined) return value as T
  if (typeof key === 'number') {
    const list = Array.isArray(thing) ? [...(thing as unknown[])] : []
    list[key] = withValue(list[key], rest, value)
    return list as T
  }
  const { [key]: old, ...others }: Record<string, unknown> = isObject(thing) ? thing : {}
  const made = withValue(old, rest, value)
  if (made === undefined) return others as T
  // A changed field keeps its place, so that a file saved from it reads as before.
  return (isObject(thing) && key in thing ? { ...thing, [key]: made } : { ...others, [key]: made }) as T
}
