import style from './control-chart.css?inline'

/** A picture for paper, whatever the theme: programs that read SVG do not know our colours by name. */
const paper: Readonly<Record<string, string>> = { card: '#ffffff', ink: '#16171a', quiet: '#55534c', line: '#d8d3c6', warn: '#8a4f00', act: '#a01515', 'liquid-deep': '#7d9e95' }
const margin = { top: 44, side: 8, bottom: 8 }
const sharpness = 3

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;')

/** The chart as it stands on the screen, with its caption, as a file of its own. */
export const chartSvg = (chart: SVGSVGElement, caption: string): { text: string; width: number; height: number } => {
  const [, , width = 0, height = 0] = (chart.getAttribute('viewBox') ?? '').split(' ').map(Number)
  const copy = chart.cloneNode(true) as SVGSVGElement
  copy.querySelector('.cursor')?.remove()
  const rules = style.replaceAll(/var\(--([a-z-]+)\)/g, (whole, name: string) => paper[name] ?? whole).replaceAll('.control-chart ', '')
  const [full, tall] = [width + 2 * margin.side, height + margin.top + margin.bottom]
  const lines = wrapped(caption, Math.floor(width / 6.2))
  const text = [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${full}" height="${tall}" viewBox="0 0 ${full} ${tall}" font-family="Atkinson Hyperlegible Next, sans-serif">`,
    `<title>${escaped(caption)}</title><style>${rules}</style><rect width="${full}" height="${tall}" fill="#ffffff"/>`,
    ...lines.map((line, index) => `<text x="${margin.side}" y="${16 + index * 15}" font-size="12" fill="#16171a">${escaped(line)}</text>`),
    `<g transform="translate(${margin.side} ${margin.top})">${[...copy.children].map((child) => new XMLSerializer().serializeToString(child)).join('')}</g></svg>`,
  ].join('')
  return { text, width: full, height: tall }
}

/** At most two lines of so many letters. */
const wrapped = (text: string, letters: number): string[] => {
  const lines = ['']
  for (const word of text.split(' ')) {
    const line = `${lines.at(-1)} ${word}`.trim()
    if (line.length <= letters || lines.length === 2) lines[lines.length - 1] = line
    else lines.push(word)
  }
  return lines
}

export const chartPng = async (chart: SVGSVGElement, caption: string): Promise<Blob> => {
  const { text, width, height } = chartSvg(chart, caption)
  const image = new Image()
  const url = URL.createObjectURL(new Blob([text], { type: 'image/svg+xml' }))
  try {
    image.src = url
    await image.decode()
    const canvas = document.createElement('canvas')
    canvas.width = width * sharpness
    canvas.height = height * sharpness
    canvas.getContext('2d')!.drawImage(image, 0, 0, canvas.width, canvas.height)
    return await new Promise((give, refuse) => canvas.toBlob((blob) => (blob ? give(blob) : refuse(new Error('the canvas gave no picture'))), 'image/png'))
  } finally {
    URL.revokeObjectURL(url)
  }
}
