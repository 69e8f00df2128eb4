import { assess } from '../../practice/assess';
import { matchTake } from '../../practice/match';
import type { Take } from '../../practice/take';
import type { ListeningPorts } from './listening';

/** Labels every stroke of a take and says what to work on. */
export const judgeTake: ListeningPorts['judge'] = (take: Take) => {
  const matched = matchTake(take);
  return { matched, assessment: assess(take, matched) };
};
