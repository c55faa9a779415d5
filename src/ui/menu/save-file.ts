/** Hands a text or a picture to the person as a file, by the browser's own way. */
export const saveFile = (name: string, content: string | Blob, type = 'application/json'): void => {
  const url = URL.createObjectURL(new Blob([content], { type }))
  const link = document.createElement('a')
  link.href = url
  link.download = name
  link.click()
  // The download has its own hold on the data once the click is handled.
  setTimeout(() => URL.revokeObjectURL(url), 10_000)
}
