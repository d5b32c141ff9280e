/**
 * Puts a calendar file on a CalDAV server as a whole collection, gets it back, lists what came back as `write-files.ts` does.
 * Arguments: address of the collection, calendar file.
 */
import { readFileSync } from 'node:fs';
import { readBack } from '../read-back.ts';

const [address, path] = process.argv.slice(2);
if (!address || !path) throw new Error('expected the address of a collection and a calendar file');
const body = readFileSync(path);
// The server takes any password here; a name makes it set up that user's home, without which it refuses a collection.
const login = { Authorization: `Basic ${btoa('shed:any')}` };
const put = await fetch(address, {
  method: 'PUT',
  headers: { ...login, 'Content-Type': 'text/calendar; charset=utf-8' },
  body,
});
if (!put.ok) throw new Error(`PUT: found status ${put.status}, expected 2xx: ${await put.text()}`);
const got = await fetch(address, { headers: login });
if (!got.ok) throw new Error(`GET: found status ${got.status}, expected 2xx`);
const sent = new Map(readBack(body.toString()).events.map((event) => [event.uid, event]));
const { events } = readBack(await got.text());
for (const event of events) {
  if (JSON.stringify(sent.get(event.uid)) !== JSON.stringify(event)) {
    throw new Error(`found ${JSON.stringify(event)}, expected ${JSON.stringify(sent.get(event.uid))}`);
  }
}
for (const { uid, start, end, summary } of events) console.log([uid, start, end, summary].join('\t'));
