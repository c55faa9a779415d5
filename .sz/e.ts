export { openExchange } from '../src/device/open-phone.ts'
