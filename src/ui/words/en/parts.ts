export const parts = { hold: 'Press and hold until the line is full' }
