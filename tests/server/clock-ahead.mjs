// Loaded before the server by a test: its clock stands ahead by so many milliseconds, as when time has gone by.
const ahead = Number(process.env['CLOCK_AHEAD_MS'] ?? 0)
const now = Date.now.bind(Date)
Date.now = () => now() + ahead
