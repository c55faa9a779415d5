import type { ComponentChildren } from 'preact'
import { tied } from '../format.ts'
import { Onward } from './icons.tsx'
import './card.css'

/** A sheet of paper on the bench: one subject. */
export const Card = ({ title, beside, level = 2, children }: { title?: ComponentChildren; beside?: ComponentChildren; level?: 2 | 3; children?: ComponentChildren }) => {
  const Heading = level === 2 ? 'h2' : 'h3'
  return (
    <section class="card">
      {title || beside ? (
        <header>
          {title ? <Heading>{title}</Heading> : null}
          {beside ? <div class="small quiet">{beside}</div> : null}
        </header>
      ) : null}
      {children}
    </section>
  )
}

export const Rows = ({ children, label }: { children: ComponentChildren; label?: string }) => (
  <ul class="rows" aria-label={label}>
    {children}
  </ul>
)

/** A line of a list; with `href` or `onPress` the whole line is the target. */
export const Row = ({ what, under, value, href, onPress }: { what: ComponentChildren; under?: ComponentChildren; value?: ComponentChildren; href?: string; onPress?: () => void }) => {
  const inner = (
    <>
      <span class="what">
        {tied(what)}
        {under ? <span class="small quiet" style={{ display: 'block' }}>{tied(under)}</span> : null}
      </span>
      {value !== undefined ? <span class="value">{value}</span> : null}
      {href || onPress ? <Onward /> : null}
    </>
  )
  return (
    <li>
      {href ? (
        <a class="row" href={href}>{inner}</a>
      ) : onPress ? (
        <button type="button" class="row" onClick={onPress}>{inner}</button>
      ) : (
        <div class="row">{inner}</div>
      )}
    </li>
  )
}
