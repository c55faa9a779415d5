import type { WrittenPlan } from '../../plan/written-plan.ts'
import { edgeUnits } from '../bench/edge-units.ts'
import type { Words } from '../words/words.ts'
import type { PartField } from './field.ts'
import { optionsOf } from './sources.ts'

/** At most so many figures: conversion must not show what nobody keyed. */
const figures = 10

/** A value of the plan as it is shown: in the laboratory's units, by names and not by ids. */
export const valueText = (plan: WrittenPlan, field: PartField | undefined, value: unknown, checkUnit: string | undefined, words: Words): string => {
  const say = words.plan
  if (value === undefined || value === null || value === '') return say.review.nothing
  if (typeof value === 'boolean') return value ? say.yes : say.no
  const named = (id: unknown): string => {
    const from = field?.kind === 'pick' || field?.kind === 'pickSome' ? field.from : undefined
    return (from && optionsOf(plan, from).find((it) => it.value === id)?.says) ?? String(id)
  }
  if (typeof value === 'number') {
    const unit = field?.kind === 'number' ? field.unit : undefined
    if (typeof unit === 'object') return `${shown(value)}${unitAfter(checkUnit)}`
    if (unit === undefined) return shown(value)
    const edge = edgeUnits(plan.units)(unit)
    return `${shown(edge.toShown(value))}${unitAfter(edge.shown)}`
  }
  if (Array.isArray(value)) {
    if (value.every((it) => typeof it !== 'object')) return value.map((it) => (field?.kind === 'some' ? say.choice(field.says, String(it)) : named(it))).join(', ')
    return String(value.length)
  }
  if (typeof value === 'object') {
    if (field?.kind === 'group') {
      const its = value as Readonly<Record<string, unknown>>
      const unit = typeof its['unit'] === 'string' ? its['unit'] : checkUnit
      return Object.entries(field.fields).filter(([name]) => its[name] !== undefined).map(([name, of]) => `${say.nameOf(of.says)}: ${valueText(plan, of, its[name], unit, words)}`).join(' · ')
    }
    const kind = 'kind' in value ? String(value.kind) : undefined
    return kind && field ? say.choice(field.says, kind) : Object.values(value).filter((it) => typeof it !== 'object').map((it) => (typeof it === 'number' ? shown(it) : String(it))).join(' · ')
  }
  const text = String(value)
  if (field?.kind === 'instant') return Number.isFinite(Date.parse(text)) ? Temporal.Instant.from(text).toZonedDateTimeISO(plan.timeZone).toPlainDateTime().toString({ smallestUnit: 'minute' }).replace('T', ' ') : text
  if (field?.kind === 'choice') return say.choice(field.says, text)
  return field?.kind === 'pick' ? named(text) : text
}

const shown = (value: number): string => String(Number(value.toPrecision(figures))).replace('-', '−')
const unitAfter = (unit: string | undefined): string => (unit === undefined || unit === '' || unit === '1' || unit === 'pH' ? '' : ` ${unit}`)
