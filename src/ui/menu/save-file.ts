/** Hands a text to the person as a file, by the browser's own way. */
export const saveFile = (name: string, text: string, type = 'application/json'): void => {
  const url = URL.createObjectURL(new Blob([text], { type }))
  const link = document.createElement('a')
  link.href = url
  link.download = name
  link.click()
  // The download has its own hold on the data once the click is handled.
  setTimeout(() => URL.revokeObjectURL(url), 10_000)
}
