// Makes an empty embedded database in the folder given. It runs as a process of its own, because the making takes
// some 700 MB that PGlite never gives back.
import { PGlite } from '@electric-sql/pglite';

const database = await PGlite.create(process.argv[2]);
await database.close();
