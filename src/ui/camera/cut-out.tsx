import { useLayoutEffect, useRef } from 'preact/hooks'
import type { GrayImage } from '../../reader/picture.ts'
import { useApp, useWords } from '../app-context.ts'

/** The line of figures as the reader saw it, in the ink of the theme: a white picture would blind under a safelight. */
export const CutOut = ({ of }: { of: GrayImage }) => {
  const { theme } = useApp()
  const words = useWords().camera
  const canvas = useRef<HTMLCanvasElement>(null)
  useLayoutEffect(() => {
    const it = canvas.current!
    it.width = of.width
    it.height = of.height
    const context = it.getContext('2d')!
    context.fillStyle = getComputedStyle(it).color
    context.fillRect(0, 0, of.width, of.height)
    const image = context.getImageData(0, 0, of.width, of.height)
    of.data.forEach((ground, at) => (image.data[at * 4 + 3] = 255 - ground))
    context.putImageData(image, 0, 0)
  }, [of, theme.value])
  return <canvas ref={canvas} class="cut-out" role="img" aria-label={words.cutOut} />
}
