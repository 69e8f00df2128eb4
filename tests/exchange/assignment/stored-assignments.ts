/** Files as the first version wrote them. These texts are never changed: whoever kept one can open it. */
export const FIRST_ASSIGNMENT = JSON.stringify({
  ...{ contratiempo: 'assignment', version: 1, id: 'a1', title: 'Low Tide' },
  text: 'title: Low Tide\nkey: D\nclave: 2-3 son\ntempo: half = 88\n\n[A]\n| Em7 | A7 | D6 | B7 |\n',
  ...{ note: 'Left hand first.', direction: '2-3', kind: 'son', level: 3, hands: 'double', transpose: 2, tempo: 70, goalTempo: 84 },
  ...{ loop: { fromBar: 0, toBar: 4 }, passes: 3, drill: { name: 'at sight', seed: 12 }, due: '2026-11-28' },
});

const PASS = {
  ...{ at: 1_764_000_000_000, fromBar: 0, toBar: 4, tempo: 80, level: 3, direction: '2-3', clean: true, shareRight: 0.94 },
  ...{ offsetMs: -3, spreadMs: 12, stepsMs: [1, null, -4], findings: ['late chords'], source: 'midi' },
};
export const FIRST_RESULTS = JSON.stringify({
  ...{ contratiempo: 'results', version: 1, assignment: 'a1', title: 'Low Tide', goalTempo: 84, wanted: 3 },
  ...{ who: 'Inés', words: 'The turn in bar 4 is hard.', made: 1_764_000_100_000 },
  passes: [
    PASS,
    {
      ...PASS,
      clean: false,
      tempo: 84,
      shareRight: null,
      offsetMs: null,
      spreadMs: null,
      stepsMs: [],
      findings: ['nearly'],
      source: 'own rating',
    },
  ],
  drills: [{ at: 1_764_000_050_000, drill: 'at sight', seed: 12, right: 7, of: 8 }],
});
