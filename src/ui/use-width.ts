import { useLayoutEffect, useState } from 'preact/hooks'

/** A picture that is made before the page has told its width. */
const usualWidth = 328

/** As wide as the drawing is on this screen, in pixels: what is written in it keeps its size. */
export const useWidth = (svg: { current: SVGSVGElement | null }): number => {
  const [width, setWidth] = useState(usualWidth)
  useLayoutEffect(() => {
    const it = svg.current!
    const measure = (): void => {
      const found = Math.round(it.getBoundingClientRect().width)
      if (found > 0) setWidth(found)
    }
    measure()
    const watch = new ResizeObserver(measure)
    watch.observe(it)
    return () => watch.disconnect()
  }, [])
  return width
}

/** Of a chart so wide: low enough for a phone held upright, and no taller than a desk shows at once. */
export const chartHeight = (width: number, { least, most = 340 }: { least: number; most?: number }): number => Math.round(Math.min(most, Math.max(least, width * 0.42)))
