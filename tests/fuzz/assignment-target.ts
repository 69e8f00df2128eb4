import assert from 'node:assert/strict';
import { writeAssignment, writeResults } from '../../src/exchange/assignment/assignment';
import { readAssignmentFile } from '../../src/exchange/assignment/read-assignment';
import { rowOf } from '../../src/state/assignment/progress';
import { ASSIGNMENT_WORDS } from '../../src/words/assignment';
import { FIRST_ASSIGNMENT, FIRST_RESULTS } from '../exchange/assignment/stored-assignments';
import { target } from './fuzz-target';
import { mutate } from './mutate';
import { mutateJson } from './mutate-json';

/** Assignment and results files: what is read comes back the same and makes a row; of what is not, every fault has its sentence. */
export const ASSIGNMENTS = target<string>({
  name: 'assignments',
  make(random) {
    const file = random() < 0.5 ? FIRST_ASSIGNMENT : FIRST_RESULTS;
    return random() < 0.2 ? mutate(file, random) : mutateJson(JSON.parse(file), random);
  },
  check(text) {
    const read = readAssignmentFile(text);
    if (!read.ok) {
      assert(read.faults.length > 0 && read.faults.length <= 20);
      for (const fault of read.faults) assert(ASSIGNMENT_WORDS.fault('file', fault).length < 400);
      return false;
    }
    const file = read.value;
    const written = file.kind === 'assignment' ? writeAssignment(file.assignment) : writeResults(file.results);
    const again = readAssignmentFile(written);
    assert(again.ok && again.value.kind === file.kind, 'what was read is written whole');
    assert.equal(JSON.stringify(again.value), JSON.stringify(file));
    if (file.kind === 'results') {
      const { shareClean, said } = rowOf(file.results);
      assert((shareClean === null || (shareClean >= 0 && shareClean <= 1)) && said.length <= 3);
    }
    return true;
  },
});
