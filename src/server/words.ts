/**
 * What the server program says to whoever stands at its terminal: what happened, what is safe, what to do. Phones get codes, and have their
 * own words for them.
 */
export const notBuilt = 'The front end has not been built yet. Start the server with "npm start", or run "npm run build" once.\n'
