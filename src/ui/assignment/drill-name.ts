import { DRILLS } from '../../words/drills';

/** A drill by the name it has on the page; one that is not known by what the file calls it. */
export function drillName(drill: string): string {
  const names: Readonly<Record<string, string>> = DRILLS.names;
  return names[drill] ?? drill;
}
