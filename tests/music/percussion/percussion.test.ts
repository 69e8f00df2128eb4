import { describe, expect, it } from 'vitest';
import type { SoundingBar } from '../../../src/music/chart/chart';
import { inBar, parts, stepsIn, VERSE_CORO } from './sounding';

describe('percussion over sounding bars', () => {
  it('plays the kit of the section: shells, martillo and one conga, then bells and two congas', () => {
    const { bars, percussion } = parts(VERSE_CORO('2-3'));
    const sounding = (bar: SoundingBar | undefined) => Object.keys(percussion).filter((name) => inBar(percussion[name], bar).length > 0);
    expect(sounding(bars[0])).toEqual(['cascara', 'timbales', 'bongo', 'conga']);
    expect(sounding(bars[5])).toEqual(['mambo bell', 'timbales', 'bongo bell', 'conga']);
    expect(stepsIn(percussion.cascara, bars[0])).toBe('0 2 4 5 7');
    expect(inBar(percussion.conga, bars[5])).toEqual([
      '0 heel',
      '1 toe',
      '2 slap',
      '3 open low',
      '4 open low',
      '5 toe',
      '6 open',
      '7 open',
    ]);
  });

  it('keeps the unbroken clave through a section of seven bars: the next one begins on the other side', () => {
    const { bars, percussion } = parts('clave: 2-3 son\n[A]\n| C | C | C | C | C | C | C |\n[B]\n| G | G |');
    expect(bars[7]?.side).toBe(3);
    // Timbales pattern sheet: the 3-side of cáscara is x.xx.x.x, the 2-side x.x.xx.x.
    expect(stepsIn(percussion.cascara, bars[7])).toBe('0 2 3 5 7');
    expect(stepsIn(percussion.cascara, bars[8])).toBe('0 2 4 5 7');
  });

  it('crosses a bar with the clave after a bar of 2/4', () => {
    const { bars, percussion } = parts('clave: 2-3 son\n| C | G | (2/4) C | F | G |', { choice: ['cascara'] });
    // After half a 2-side (x.x.) the next bar holds its rest (xx.x) and the first half of the 3-side (x.xx).
    expect(stepsIn(percussion.cascara, bars[2])).toBe('0 2');
    expect(stepsIn(percussion.cascara, bars[3])).toBe('0 1 3 4 6 7');
    expect(stepsIn(percussion.cascara, bars[4])).toBe('1 3 4 6');
  });

  it('crosses a bar with the bell after a bar of 3/8 in 6/8', () => {
    const { bars, percussion } = parts('meter: 6/8\nclave: 3-2 bembe\nstyle: bembe\n| C | G | (3/8) C | F |', { choice: ['6/8 bell'] });
    // x.x.xx .x.x.x: half of the 3-side, then its other half and half of the 2-side.
    expect(stepsIn(percussion.bell, bars[2])).toBe('0 2');
    expect(stepsIn(percussion.bell, bars[3])).toBe('1 2 4');
  });

  it('turns with a restart of the clave', () => {
    const { bars, percussion } = parts('clave: 2-3 son\n[A]\n| C | C | C |\n[B, clave restart 2-3]\n| G | G |', { choice: ['mambo bell'] });
    expect(bars[3]?.side).toBe(2);
    expect(stepsIn(percussion['mambo bell'], bars[3])).toBe('0 2 4 5 6 7');
    expect(stepsIn(percussion['mambo bell'], bars[4])).toBe('1 2 3 4 6 7');
  });

  it('plays on through N.C. and rests, and is silent in a stop', () => {
    const { bars, percussion } = parts('clave: 2-3 son\n| C | N.C. | rest 1 | stop | C | G |');
    expect(bars.map(({ playing }) => playing)).toEqual(['band', 'rhythm', 'rhythm', 'nobody', 'band', 'band']);
    const counts = bars.map((bar) => inBar(percussion.cascara, bar).length);
    expect(counts).toEqual([5, 5, 5, 0, 5, 5]);
    for (const part of Object.values(percussion)) expect(inBar(part, bars[3])).toEqual([]);
  });

  it('strikes the hits of the band instead of the groove, on timbales, conga and bongo', () => {
    const { bars, percussion } = parts('clave: 2-3 son\n| C | G {1 2& 4&~} | C | G |');
    expect(inBar(percussion.timbales, bars[1])).toEqual(['0 accent', '3 accent', '7 accent']);
    expect(inBar(percussion.conga, bars[1])).toEqual(['0 accent', '3 accent', '7 accent']);
    expect(inBar(percussion.bongo, bars[1])).toEqual(['0 accent', '3 accent', '7 accent']);
    expect(inBar(percussion.cascara, bars[1])).toEqual([]);
  });

  it('strikes hits on the bongo bell while the bongo player holds it, and on what there is where no drum plays', () => {
    const coro = parts('clave: 2-3 son\n[Coro, role: coro]\n| C | G {1} |');
    expect(inBar(coro.percussion['bongo bell'], coro.bars[1])).toEqual(['0 mouth']);
    const swing = parts('clave: 2-3 son\nstyle: swing\n| C | G {1 3} |');
    expect(inBar(swing.percussion.maracas, swing.bars[1])).toEqual(['0 accent', '4 accent']);
  });

  it('strikes a written push an eighth before its chord and keeps the groove', () => {
    const { bars, percussion } = parts('clave: 2-3 son\n| C | >G | C | G |');
    expect(inBar(percussion.timbales, bars[0])).toEqual(['2 muffled', '6 open', '7 accent']);
    expect(inBar(percussion.conga, bars[0]).at(-1)).toBe('7 accent');
    expect(stepsIn(percussion.cascara, bars[1])).toBe('0 2 3 5 7');
  });

  it('takes a push on the first chord round to the end of a closed loop, and leaves it out of an open form', () => {
    const closed = parts('clave: 2-3 son\n| >C | G |', { closed: true });
    expect(inBar(closed.percussion.timbales, closed.bars[1]).at(-1)).toBe('7 accent');
    const open = parts('clave: 2-3 son\n| >C | G |');
    expect(inBar(open.percussion.timbales, open.bars[1]).at(-1)).toBe('6 open');
  });

  it('is silent in a pickup but for its hits', () => {
    const text = 'clave: 2-3 son\n| (pickup) C | G | C |';
    const { bars, percussion } = parts(text, { pickup: true });
    expect(bars[0]?.kind).toBe('pickup');
    expect(Object.values(percussion).flatMap((part) => inBar(part, bars[0]))).toEqual([]);
    expect(stepsIn(percussion.cascara, bars[1])).toBe('0 2 4 5 7');
  });

  it('plays nothing when told so, and the patterns it is told, in the meter they belong to', () => {
    expect(parts('| C | G |', { choice: 'none' }).percussion).toEqual({});
    expect(Object.keys(parts(VERSE_CORO('2-3'), { choice: ['guiro', 'maracas', '6/8 bell'] }).percussion)).toEqual(['guiro', 'maracas']);
    expect(parts('| C | G |', { choice: [] }).percussion).toEqual({});
  });

  it('follows the style of each section', () => {
    const { bars, percussion } = parts(
      'style: salsa\nclave: 2-3 son\n[A]\n| C | G |\n[B, style: cha-cha-chá]\n| C | G |\n[C, style: bossa]\n| C | G |',
    );
    expect(inBar(percussion.cascara, bars[2])).toEqual([]);
    expect(inBar(percussion.guiro, bars[2])).toEqual([
      '0 long scrape',
      '2 short scrape',
      '3 short scrape',
      '4 long scrape',
      '6 short scrape',
      '7 short scrape',
    ]);
    expect(Object.keys(percussion).filter((name) => inBar(percussion[name], bars[4]).length > 0)).toEqual(['maracas']);
  });
});
