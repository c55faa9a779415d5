import type { JSX } from 'preact'
import './pictogram.css'

/** Symbols of the UN's globally harmonized system, drawn for this product after its standard: black on white in a red diamond. */
const symbols: Record<string, JSX.Element> = {
  // Exploding bomb.
  GHS01: <><circle cx="47" cy="58" r="12" /><path d="M56 49l6-7" class="line" /><path d="M62 42l2-9 4 6 7-3-3 7 6 3-8 2 1 7-6-5-5 4z" /><path d="M30 46l-7-6 M28 58h-9 M33 70l-6 6 M47 76v8" class="line" /></>,
  // Flame.
  GHS02: <><path d="M50 22c4 9 15 14 15 28 0 9-6 16-15 16s-15-7-15-16c0-6 3-10 6-13 0 5 2 7 4 8-1-9 1-17 5-23z" /><path d="M33 75h34" class="line" /></>,
  // Flame over circle.
  GHS03: <><path d="M50 18c3 7 11 11 11 21 0 7-5 11-11 11s-11-4-11-11c0-4 2-7 4-9 0 3 2 5 3 6 0-7 1-13 4-18z" /><circle cx="50" cy="64" r="10" class="ring" /><path d="M36 78h28" class="line" /></>,
  // Gas cylinder.
  GHS04: <path d="M30 62l30-30q4-4 9 1t1 9l-30 30q-4 4-9-1t-1-9z M66 30l4-4 6 6-4 4z" />,
  // Corrosion: onto metal and a hand.
  GHS05: <><path d="M27 32l18-7 2 5-18 7z M73 32l-18-7-2 5 18 7z" /><path d="M41 34v3 M41 41v4 M38 48l2 3 M59 34v3 M59 41v4 M62 48l-2 3" class="line" /><path d="M24 60h22v5c-3 0-3 4-6 4s-4-3-6-4h-10z M24 72h24v4h-24z M54 66c6-1 7-4 10-5 4-1 10 3 16 3v10h-26z" /></>,
  // Skull and crossbones.
  GHS06: <><path d="M50 22c12 0 19 8 19 17 0 7-3 10-7 13v6h-24v-6c-4-3-7-6-7-13 0-9 7-17 19-17z M42 36a5 5 0 100 10 5 5 0 100-10z M58 36a5 5 0 100 10 5 5 0 100-10z M50 45l-3 6h6z" fill-rule="evenodd" /><path d="M30 64l40 14 M70 64l-40 14" class="line thick" /></>,
  // Exclamation mark.
  GHS07: <><path d="M44 26h12l-3 32h-6z" /><circle cx="50" cy="69" r="6" /></>,
  // Health hazard: a chest with a star.
  GHS08: <><circle cx="50" cy="28" r="8" /><path d="M34 76v-26q0-12 16-12t16 12v26z" /><path class="star" d="M50 44l3 8 8-3-3 8 8 3-8 3 3 8-8-3-3 8-3-8-8 3 3-8-8-3 8-3-3-8 8 3z" /></>,
  // Environment: a tree and a fish.
  GHS09: <><path d="M36 72v-16l-8-7 2-3 6 4v-16l3 0v12l7-7 2 3-9 9v21z" /><path d="M24 74h52" class="line" /><path d="M54 63q8-9 18-2l6-4v10l-6-3q-9 7-18-1z" /></>,
}

/** A hazard in its diamond; the code stands as its name, so that nobody needs to know the drawing. */
export const Pictogram = ({ code, name }: { code: string; name: string }) => (
  <svg class="pictogram" viewBox="0 0 100 100" role="img" aria-label={name}>
    <path class="diamond" d="M50 3.5L96.5 50 50 96.5 3.5 50z" />
    <g class="symbol">{symbols[code] ?? null}</g>
  </svg>
)
