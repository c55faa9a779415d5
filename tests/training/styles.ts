import type { Random } from './random.ts'

/** Kinds of display; scores are told for each. */
export const styles = ['lcd', 'italic', 'backlit', 'redLed', 'otherLed', 'dot', 'print'] as const
export type Style = (typeof styles)[number]

export type Rgb = [number, number, number]

export interface Palette {
  ground: Rgb
  ink: Rgb
  /** Strength of unlit segments, as a share of full ink; 0 for none. */
  ghost: number
  /** Radius of the glow as a share of the figure's height; lit displays only. */
  glow: number
  /** Shadow that a liquid crystal throws on its back plate, as a share of the figure's height. */
  shadow: number
}

const near = (random: Random, colour: Rgb, spread: number): Rgb => colour.map((part) => Math.min(255, Math.max(0, part + random.between(-spread, spread)))) as Rgb

const reflective = (random: Random): Palette => {
  const light = random.between(110, 215)
  return {
    ground: near(random, [light * 0.93, light, light * 0.86], 12),
    ink: near(random, [light * random.between(0.08, 0.42), light * random.between(0.08, 0.42), light * random.between(0.1, 0.42)], 8),
    ghost: random.chance(0.6) ? random.between(0.02, 0.14) : 0,
    glow: 0,
    shadow: random.chance(0.6) ? random.between(0.015, 0.06) : 0,
  }
}

const lit = (random: Random, ink: Rgb): Palette => ({
  ground: near(random, [18, 16, 16], 16),
  ink: near(random, ink, 18),
  ghost: random.chance(0.6) ? random.between(0.03, 0.15) : 0,
  glow: random.chance(0.7) ? random.between(0.03, 0.16) : 0,
  shadow: 0,
})

const backlit = (random: Random): Palette => {
  const isNegative = random.chance(0.5)
  const colour = random.pick<Rgb>([[40, 70, 200], [60, 140, 235], [20, 120, 80], [230, 150, 40], [150, 210, 60], [225, 235, 240]])
  if (isNegative) {
    const ground = near(random, colour.map((part) => part * 0.45) as Rgb, 10)
    return { ground, ink: near(random, [225, 235, 245], 25), ghost: random.chance(0.4) ? random.between(0.03, 0.12) : 0, glow: random.chance(0.4) ? random.between(0.02, 0.08) : 0, shadow: 0 }
  }
  return { ground: near(random, colour, 15), ink: near(random, colour.map((part) => part * random.between(0.08, 0.35)) as Rgb, 8), ghost: random.chance(0.5) ? random.between(0.02, 0.14) : 0, glow: 0, shadow: random.chance(0.4) ? random.between(0.01, 0.05) : 0 }
}

const otherLed: readonly Rgb[] = [[60, 255, 90], [255, 170, 30], [70, 120, 255], [240, 245, 255], [80, 255, 220], [255, 240, 80]]

const printed = (random: Random): Palette => {
  const isLightOnDark = random.chance(0.45)
  const [bright, dark] = [near(random, [225, 225, 220], 28), near(random, [30, 30, 34], 28)]
  return { ground: isLightOnDark ? dark : bright, ink: isLightOnDark ? bright : dark, ghost: 0, glow: 0, shadow: 0 }
}

export const palette = (random: Random, style: Style): Palette => {
  switch (style) {
    case 'lcd':
      return reflective(random)
    case 'italic':
      return random.chance(0.7) ? reflective(random) : lit(random, [255, 50, 35])
    case 'backlit':
      return backlit(random)
    case 'redLed':
      return lit(random, [255, random.between(25, 80), random.between(20, 50)])
    case 'otherLed':
      return lit(random, random.pick(otherLed))
    case 'dot':
      return random.pick([reflective, backlit, (from: Random) => lit(from, from.pick([[255, 50, 35], ...otherLed] as const))])(random)
    case 'print':
      return printed(random)
  }
}

export const css = (colour: Rgb, opacity = 1): string => `rgba(${colour.map((part) => Math.round(part)).join(',')},${opacity})`
