export { sendInBackground } from '../sw/send-in-background.ts'
