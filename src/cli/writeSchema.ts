import { writeFileSync } from 'node:fs'

import { layoutJsonSchema } from '../domain/layout/document/jsonSchema'

/** Writes the published schema again; a test fails when it was forgotten after a change. */
const SCHEMA_FILE = new URL('../../public/layout.schema.json', import.meta.url)

writeFileSync(SCHEMA_FILE, `${JSON.stringify(layoutJsonSchema(), null, 2)}\n`)
process.stdout.write('Wrote public/layout.schema.json\n')
