import { field, type Field } from './picture.ts'

/** An ink field turned by `radians` about its centre and sheared by `slant` (columns per row), same size, linear between pixels. */
export const turned = (image: Field, radians: number, slant = 0): Field => {
  const { width, height, data } = image
  const out = field(width, height)
  const [cosine, sine] = [Math.cos(radians), Math.sin(radians)]
  const [centreX, centreY] = [(width - 1) / 2, (height - 1) / 2]
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const sheared = x - centreX - slant * (y - centreY)
      const sourceX = centreX + cosine * sheared - sine * (y - centreY)
      const sourceY = centreY + sine * sheared + cosine * (y - centreY)
      const left = Math.floor(sourceX)
      const top = Math.floor(sourceY)
      if (left < 0 || top < 0 || left >= width - 1 || top >= height - 1) continue
      const right = sourceX - left
      const down = sourceY - top
      const at = top * width + left
      out.data[y * width + x] =
        (data[at]! * (1 - right) + data[at + 1]! * right) * (1 - down) + (data[at + width]! * (1 - right) + data[at + width + 1]! * right) * down
    }
  }
  return out
}
