import { describe, expect, it } from 'vitest';
import { type ArrangeOptions, arrange, type Score } from '../../src/music/score';
import {
  type Check,
  checkAnticipation,
  checkBass,
  checkLeads,
  checkNames,
  checkStretch,
  checkTelling,
  checkTones,
  checkUncrossed,
} from './checks';
import { ANTICIPATED_BASS, combination, reachOf } from './combinations';

/** Which checks a combination must pass; what is left out, and why, stands beside it. */
function checksFor(options: ArrangeOptions): readonly Check[] {
  const device = options.devices?.[0];
  const style = options.style ?? 'salsa';
  const own = ['bolero', 'guajira', 'cha-cha-cha'].includes(style);
  return [
    checkNames,
    checkUncrossed,
    checkStretch(reachOf(options)),
    // Bolero and guajira take nothing early, by rule; their last eighth is the weak end of an arpeggio.
    ...(own ? [] : [checkLeads, checkAnticipation]),
    // A passage a half step outside is marked by its lift and exempt; the hands of a small reach leave out inner notes.
    ...(device === 'half-step-out' ? [] : [checkTones]),
    ...(device === 'half-step-out' || options.stretch === 'less than an octave' || [1, 6].includes(options.level ?? 2)
      ? []
      : [checkTelling]),
    ...(ANTICIPATED_BASS.includes(style) ? [checkBass] : []),
  ];
}

const faultsOf = (seed: number): string[] => {
  const { chart, options, name } = combination(seed);
  const score: Score = arrange(chart, options);
  return checksFor(options).flatMap((check) => check(score).map((fault) => `${fault} :: ${name}`));
};

describe('a seeded sample of everything that can be combined', () => {
  it('level, style, device, hands, stretch, colour, key, direction, clave, variant: 300 figures keep every rule that is theirs', () => {
    const faults = Array.from({ length: Number(process.env.COMBINATIONS ?? 300) }, (_, index) => faultsOf(20_261_125 + index)).flat();
    expect(faults.slice(0, 10)).toEqual([]);
  });
});
