import type { Settings } from '../settings';

/** The settings by these names as they stand, to be put back when a drill ends. */
export const loanOf = <Name extends keyof Settings>(settings: Settings, names: readonly Name[]): Pick<Settings, Name> =>
  Object.fromEntries(names.map((name) => [name, settings[name]])) as unknown as Pick<Settings, Name>;
