import type { ComponentChildren } from 'preact'
import { useEffect } from 'preact/hooks'
import '../app.css'
import './enrol.css'

/** A screen before there is a laboratory: no places, no menu. */
export const BareScreen = ({ title, next, children }: { title: string; next?: ComponentChildren; children: ComponentChildren }) => {
  useEffect(() => {
    document.title = title
  }, [title])
  return (
    <div class="app bare">
      <main id="content">
        <h1>{title}</h1>
        {children}
        {next ? <div class="next">{next}</div> : null}
      </main>
    </div>
  )
}
