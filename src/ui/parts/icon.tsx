import type { ComponentChildren } from 'preact'

/** Icons of one hand: 24 × 24, stroke 2, round ends, drawn for this product. They never stand without a word or a name. */
export const Icon = ({ children, size = 24 }: { children: ComponentChildren; size?: number }) => (
  <svg width={size} height={size} viewBox="0 0 24 24" fill="none" stroke="currentColor" stroke-width="2" stroke-linecap="round" stroke-linejoin="round" aria-hidden="true" focusable="false">
    {children}
  </svg>
)
