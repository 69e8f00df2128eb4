/**
 * What lay on players' devices, as earlier versions of the page wrote it. These texts are never changed: whoever opens the page with one of
 * them finds everything in its place.
 */
export const FIRST_RELEASE: Readonly<Record<string, string>> = {
  desk: '{"record":"desk","version":1,"body":{"chartId":"4f0c2a7be1d84c5a9b3e6d70"}}',
  shelf:
    '{"record":"shelf","version":1,"body":{"entries":[{"id":"4f0c2a7be1d84c5a9b3e6d70","title":"Breakwater","changed":1763900000000},{"id":"b1946ac92492d2347c6235b4","title":"Untitled","changed":1763800000000}]}}',
  'chart/4f0c2a7be1d84c5a9b3e6d70':
    '{"record":"chart","version":1,"body":{"text":"title: Breakwater\\nkey: F\\nclave: 3-2 son\\ntempo: half = 90\\n\\n[A]\\n| Gm7 | C7 | F6 | D7 ||\\n","good":null}}',
  'chart/b1946ac92492d2347c6235b4': '{"record":"chart","version":1,"body":{"text":"[A]\\n| H7 | C7 |\\n","good":"[A]\\n| B7 | C7 |\\n"}}',
  'settings/4f0c2a7be1d84c5a9b3e6d70':
    '{"record":"settings","version":1,"body":{"tempo":72,"goalTempo":90,"direction":"3-2","kind":"son","level":3,"devices":["octave-up"],"hands":"wide","colour":"jazz","stretch":"octave","compass":88,"percussion":true,"transpose":2,"seed":1,"loop":{"fromBar":0,"toBar":2},"countInBars":2,"round":"round and round","pulse":"halves","view":"staff","balance":{"piano right":{"level":0.9,"muted":false},"bass":{"level":0.2,"muted":true}}}}',
  preferences:
    '{"record":"preferences","version":1,"body":{"theme":"night","tempoUnit":"quarter","shortcuts":false,"paper":"Letter","ceiling":0.5,"tuningCents":-20,"cautionSeen":true}}',
};

/** Later releases wrote more fields into the same records, and records of their own. */
export const VOCABULARY_RELEASE: Readonly<Record<string, string>> = {
  ...FIRST_RELEASE,
  'settings/4f0c2a7be1d84c5a9b3e6d70':
    '{"record":"settings","version":1,"body":{"tempo":72,"goalTempo":90,"direction":"3-2","kind":"rumba","level":"by section","style":"songo","devices":[],"hands":"tenths","colour":"plain","stretch":"ninth","compass":61,"cells":null,"ownFigure":null,"crossed":false,"percussion":"by style","edits":[],"undoneEdits":[],"solo":null,"feel":"measured","transpose":0,"seed":0,"loop":null,"countInBars":1,"round":"round and round","pulse":"halves","view":"grid","balance":{}}}',
  habits: '{"record":"habits","version":1,"body":{"seen":["play"],"strip":false}}',
};
