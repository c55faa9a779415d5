import { chmodSync, closeSync, fsyncSync, openSync, renameSync, writeSync } from 'node:fs'
import { dirname } from 'node:path'

/** Makes a change of names in a folder durable. Some systems cannot open a folder (Windows); there the file system keeps its own order. */
export const syncFolder = (folder: string): void => {
  let opened: number | undefined
  try {
    opened = openSync(folder, 'r')
    fsyncSync(opened)
  } catch (error) {
    if (process.platform !== 'win32') throw error
  } finally {
    if (opened !== undefined) closeSync(opened)
  }
}

export const syncFile = (file: string): void => {
  const opened = openSync(file, 'r+')
  try {
    fsyncSync(opened)
  } finally {
    closeSync(opened)
  }
}

/** Writes a file so that, whatever happens meanwhile, there is the old one or the new one under its name and never a half. */
export const writeWhole = (file: string, text: string, mode: number): void => {
  const part = `${file}.part`
  const opened = openSync(part, 'w', mode)
  try {
    writeSync(opened, text)
    fsyncSync(opened)
  } finally {
    closeSync(opened)
  }
  chmodSync(part, mode)
  renameSync(part, file)
  syncFolder(dirname(file))
}
