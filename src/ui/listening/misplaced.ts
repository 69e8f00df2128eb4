import type { PassReport } from '../../state/listening/listening-state';

const KINDS = ['crossed', 'displaced', 'other clave', 'silent'];

/** True when the pattern as a whole lay in the wrong place: one mistake, said once, and no mark on every stroke. */
export const isMisplaced = ({ assessment }: PassReport): boolean => {
  const [first] = assessment.findings;
  return first !== undefined && KINDS.includes(first.facts.kind);
};
