// The server of the other side: PouchDB on LevelDB behind its own HTTP server. Prints its port; ends with its parent.
import { createServer } from 'node:http'
import expressPouch from 'express-pouchdb'
import PouchDB from 'pouchdb'

const folder = process.argv[2]
const app = expressPouch(PouchDB.defaults({ prefix: `${folder}/` }), { mode: 'minimumForPouchDB', inMemoryConfig: true, logPath: `${folder}/log.txt` })
const server = createServer(app).listen(0, '127.0.0.1', () => console.log(server.address().port))
process.stdin.resume().on('end', () => process.exit())
