/** Assignment and results files: they come back as they went, and what is wrong in one is named. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Assignment,
  assignmentFileName,
  LONGEST_FILE,
  MOST_PASSES,
  type Results,
  resultsFileName,
  writeAssignment,
  writeResults,
} from '../../../src/exchange/assignment/assignment';
import { readAssignmentFile } from '../../../src/exchange/assignment/read-assignment';
import { ASSIGNMENT_WORDS } from '../../../src/words/assignment';
import { FIRST_ASSIGNMENT, FIRST_RESULTS } from './stored-assignments';

const read = (text: string) => readAssignmentFile(text);
const assignmentOf = (text: string): Assignment => {
  const file = read(text);
  if (!file.ok || file.value.kind !== 'assignment') throw new Error(JSON.stringify(file));
  return file.value.assignment;
};
const resultsOf = (text: string): Results => {
  const file = read(text);
  if (!file.ok || file.value.kind !== 'results') throw new Error(JSON.stringify(file));
  return file.value.results;
};
const ASSIGNMENT = assignmentOf(FIRST_ASSIGNMENT);
const RESULTS = resultsOf(FIRST_RESULTS);
/** The first sentence said of a file. */
const said = (text: string): string => {
  const file = read(text);
  return file.ok ? 'read' : ASSIGNMENT_WORDS.fault('low-tide.tarea.json', file.faults[0] ?? { code: 'no json', found: '' });
};
const withFields = (fields: object): string => JSON.stringify({ ...JSON.parse(FIRST_ASSIGNMENT), ...fields });

const tempo = fc.double({ min: 25, max: 140, noNaN: true });
const assignments = fc.record<Assignment>({
  id: fc.string({ minLength: 1 }),
  title: fc.string({ unit: 'grapheme', maxLength: 60 }),
  text: fc.string({ unit: 'grapheme' }).map((text) => text.replaceAll('\r', '')),
  note: fc.string(),
  direction: fc.constantFrom('2-3', '3-2'),
  kind: fc.constantFrom('son', 'rumba'),
  level: fc.constantFrom<Assignment['level'][]>('by section', 1, 2, 3, 4, 5, 6),
  hands: fc.constantFrom('double', 'left', 'right'),
  transpose: fc.nat(11),
  tempo,
  goalTempo: tempo,
  loop: fc.option(fc.nat(200).map((fromBar) => ({ fromBar, toBar: fromBar + 2 }))),
  passes: fc.integer({ min: 1, max: 99 }),
  drill: fc.option(fc.record({ name: fc.string({ maxLength: 30 }), seed: fc.option(fc.nat(9999)) })),
  due: fc.option(fc.constantFrom('2026-11-28', '2028-02-29')),
});

describe('An assignment file', () => {
  it('comes back as it went, whatever was written in it', () => {
    fc.assert(
      fc.property(assignments, (assignment) => {
        expect(assignmentOf(writeAssignment(assignment))).toEqual(assignment);
      }),
    );
  });

  it('of the first version is read for ever, and what it does not know is left out', () => {
    expect(ASSIGNMENT).toMatchObject({ title: 'Low Tide', loop: { fromBar: 0, toBar: 4 }, passes: 3, due: '2026-11-28' });
    expect(assignmentOf(withFields({ more: '<script>' }))).toEqual(ASSIGNMENT);
  });

  it.each([
    [withFields({ passes: 0 }), 'passes: found “0”, expected a whole number from 1 to 99.'],
    [withFields({ tempo: 400 }), 'tempo: found “400”, expected a number from 25 to 140.'],
    [withFields({ direction: 'up' }), 'direction: found “up”, expected one of 2-3, 3-2.'],
    [withFields({ loop: { fromBar: 4, toBar: 4 } }), 'loop.toBar: found “4”, expected a whole number from 5 to 4000.'],
    // 2026 is no leap year.
    [withFields({ due: '2026-02-29' }), 'due: found “2026-02-29”, expected a date such as 2026-11-28, or null.'],
    [withFields({ text: 7 }), 'text: found “7”, expected a text of at most 262144 characters.'],
    [withFields({ version: 2 }), 'saved by a newer version of this page (version 2)'],
    [withFields({ contratiempo: 'backup' }), 'holds neither an assignment nor results'],
    ['title: Low Tide', 'it begins with “title: Low Tide”'],
    ['x'.repeat(LONGEST_FILE + 1), 'far too large (2000001)'],
  ])('that is wrong is refused with where, what and what was expected', (text, sentence) => {
    expect(said(text)).toContain(sentence);
  });

  it('names every fault, and stops at a list', () => {
    const file = read(withFields({ passes: 0, tempo: -1, hands: 'feet' }));
    expect(file.ok ? [] : file.faults.map((fault) => fault.code === 'field' && fault.path)).toEqual(['hands', 'tempo', 'passes']);
  });

  it('has a name that every system takes', () => {
    expect(assignmentFileName(ASSIGNMENT)).toBe('low-tide_bars-1-4.tarea.json');
    expect(assignmentFileName({ title: '../../Añoranza "x"', loop: null })).toBe('anoranza-x.tarea.json');
    expect(resultsFileName({ title: '潮', who: 'Inés' })).toBe('ines_montuno.resultado.json');
  });
});

describe('A results file', () => {
  it('comes back as it went', () => {
    expect(resultsOf(writeResults(RESULTS))).toEqual(RESULTS);
    expect(RESULTS.passes[0]).toMatchObject({ tempo: 80, clean: true, shareRight: 0.94, stepsMs: [1, null, -4] });
  });

  it('holds the last passes when there are too many', () => {
    const [pass] = RESULTS.passes;
    if (!pass) throw new Error('no pass');
    const passes = Array.from({ length: MOST_PASSES + 5 }, (_, at) => ({ ...pass, at }));
    const back = resultsOf(writeResults({ ...RESULTS, passes }));
    expect([back.passes.length, back.passes.at(-1)?.at]).toEqual([MOST_PASSES, MOST_PASSES + 4]);
  });

  it('with a pass that cannot be is refused, and says which', () => {
    const passes = [...RESULTS.passes, { ...RESULTS.passes[0], findings: ['x', 7] }];
    expect(said(JSON.stringify({ ...JSON.parse(FIRST_RESULTS), passes }))).toBe(
      'low-tide.tarea.json, passes[2].findings[1]: found “7”, expected a text of at most 60 characters.',
    );
  });
});
