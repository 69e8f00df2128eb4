// long because every command and every kind of bad use has its case
import { unzipSync } from 'fflate';
import { parseMidi } from 'midi-file';
import { describe, expect, it } from 'vitest';
import type { World } from '../../src/cli/outcome';
import { run } from '../../src/cli/run';
import { madeSounds } from '../../src/exchange/wav/pcm';
import { failed, ok } from '../../src/vocabulary';
import { readWav } from '../exchange/wav/read-wav';

const FERRY = `title: Last Ferry
key: D
clave: 2-3 son
tempo: half = 92
style: salsa

[A]
| Em7 | A7 | D6 | B7b9 |
| Em7 C7 | A7b9 | D6/9 | % {1 2& 4&~} ||
`;

function world(files: Readonly<Record<string, string>> = { ferry: FERRY }): World & { readonly written: Map<string, Uint8Array> } {
  const written = new Map<string, Uint8Array>();
  return {
    written,
    readText: (path) => (files[path] === undefined ? failed(`cannot read ${path}: no such file or folder`) : ok(files[path])),
    readBytes: (path) =>
      files[path] === undefined ? failed(`cannot read ${path}: no such file or folder`) : ok(new TextEncoder().encode(files[path])),
    today: () => '2026-11-25',
    writeBytes: (path, bytes) => {
      written.set(path, bytes);
      return ok(null);
    },
    makeFolder: () => ok(null),
    writePieces: async (path, pieces) => {
      const all: Uint8Array[] = [];
      for await (const piece of pieces) all.push(piece);
      written.set(path, new Uint8Array(Buffer.concat(all)));
      return ok(null);
    },
    sounds: async () => ok(madeSounds()),
    sheetPrinter: async () => failed('no browser to print with'),
  };
}
const at = (command: string, files?: Readonly<Record<string, string>>) => run(command.split(' '), world(files));
const jsonLines = (text: string): unknown[] =>
  text
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line));

describe('bad use', () => {
  it.each([
    ['frobnicate', 'unknown command "frobnicate"'],
    ['arrange', 'a chart is missing'],
    ['arrange ferry ferry', 'one chart at a time, got 2'],
    ['arrange nowhere', 'cannot read nowhere: no such file or folder'],
    ['export ferry --format midi --out x --passes 2', '--passes is for --format wav, not midi'],
    ['export ferry --format wav --out x --rate 96000', '--rate must be 44100 or 48000, got "96000"'],
    ['pack ferry', 'pack needs --out DIR or --out FILE.zip'],
    ['pack ferry --out x --holds midi,chalk', '--holds must list sheet, midi, musicxml or wav, got "chalk"'],
    ['pack ferry --out x --tempi 92,900', '--tempi must list numbers from 25 to 140, got "900"'],
    ['pack ferry --out x --keys D,H', 'got "H"'],
    ['arrange ferry --wild', 'unknown option --wild'],
    ['arrange ferry -x', 'unknown option -x'],
    ['arrange ferry --level', '--level needs a value'],
    ['arrange ferry --level --open', '--level needs a value'],
    ['arrange ferry --level 0', '--level must be a whole number from 1 to 6, got "0"'],
    ['arrange ferry --level 2.5', '--level must be a whole number from 1 to 6, got "2.5"'],
    ['arrange ferry --level 2 --level 3', '--level is given twice'],
    ['arrange ferry --open=yes', '--open takes no value'],
    ['arrange ferry --clave 2-4', '--clave must be 2-3 or 3-2, got "2-4"'],
    ['arrange ferry --kind bossa', '--kind must be son, rumba or bembe, got "bossa"'],
    ['arrange ferry --kind bembe', '--kind bembe needs a chart in 6/8, this one is in 4/4'],
    [
      'arrange ferry --device wah',
      '--device must be octave-up, octaves-only, one-bar-neutral, extra-note, double-notes or half-step-out, got "wah"',
    ],
    ['arrange ferry --hands four', '--hands must be double'],
    ['arrange ferry --colour blue', '--colour must be plain or jazz, got "blue"'],
    ['arrange ferry --style polka', '--style must be salsa'],
    ['arrange ferry --seed -1', '--seed must be a whole number from 0 to 2147483647, got "-1"'],
    ['arrange ferry --transpose 25', '--transpose must be a whole number from -24 to 24, got "25"'],
    ['arrange ferry --vamp 0', '--vamp must be a whole number from 1 to 64, got "0"'],
    ['arrange ferry --stretch twelfth', '--stretch must be less-than-an-octave, octave, ninth or tenth, got "twelfth"'],
    ['arrange ferry --keys 60', '--keys must be 49, 61, 76 or 88, got "60"'],
    [
      'arrange ferry --cells B2+A4',
      '--cells must be a cell for the 2-side (A1, A3, A4, A5 or A6), a plus and a cell for the 3-side (B1, B2, B3, B4, B5, B6 or B7), got "B2+A4"',
    ],
    ['arrange ferry --cells A1+B3', '--cells "A1+B3": with A1 go B1, B2, B4, B5, B6 or B7'],
    ['arrange ferry --kind rumba --cells A4+B2', '--cells A4+B2 does not go with rumba clave; with A4 go B1, B4 or B7'],
    ['arrange ferry --figure x.xx.x.x.x.xx.x', '--figure must be two bars of 8 steps'],
    ['arrange ferry --crossed=yes', '--crossed takes no value'],
    ['arrange ferry --solo loud', '--solo must be example or scaffold, got "loud"'],
    ['arrange ferry --percussion cascara,spoons', '--percussion must be by-style, none, or of cascara, mambo-bell'],
    ['arrange ferry --format xml', '--format must be json or grid, got "xml"'],
    ['arrange -- --level', 'cannot read --level'],
    ['explain ferry', 'explain needs --bar N'],
    ['explain ferry --bar 0', '--bar must be a whole number from 1'],
    ['explain ferry --bar 9', '--bar 9: the form has 8 bars'],
    ['export ferry --format midi', 'export needs --out FILE'],
    ['export ferry --out song.mid', 'export needs --format midi, musicxml, wav or sheet'],
    ['export ferry --format musicxml --out a.xml --feel measured', '--feel is for --format midi, not musicxml'],
    ['export ferry --format midi --out a.mid --feel loose', '--feel must be straight or measured, got "loose"'],
    ['check ferry --level 2', 'unknown option --level'],
    ['chord', 'a chord symbol is missing'],
    ['clave extra', 'clave takes options alone, got "extra"'],
    ['alignment', 'a grid is missing'],
    ['alignment x.x', 'found 3'],
    ['alignment x.xx.x.x.x.x.x.o', 'column 16: expected x for a stroke or . for a rest'],
  ])('"%s" exits 2 with one line', (command, message) => {
    const { code, out, err } = at(command);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(/^[^\n]+\n$/);
    expect(err).toContain(message);
  });

  it('refuses a vamp that makes the form longer than can be played', () => {
    const long = `[Coro, on cue]\n${'| Em7 | A7 |\n'.repeat(50)}`;
    expect(at('arrange long --vamp 41', { long })).toEqual({
      code: 2,
      out: '',
      err: '--vamp 41: the form would have 4100 bars, at most 4000 are played\n',
    });
  });

  it('names the commands when none is given', () => {
    expect(run([], world())).toEqual({
      code: 2,
      out: '',
      err: expect.stringMatching(/^a command is missing; .*arrange.*export pack import\n$/),
    });
    expect(run(['help'], world()).code).toBe(0);
  });

  it('says in one line what to install where there is no browser to print with', async () => {
    const { rest } = at('export ferry --format sheet --out a.pdf');
    expect(await rest?.()).toEqual({ code: 2, out: '', err: 'no browser to print with\n' });
    const pack = at('pack ferry --out folder');
    expect(await pack.rest?.()).toEqual({
      code: 2,
      out: '',
      err: 'no browser to print with; or leave the sheets out with --holds midi,musicxml,wav\n',
    });
  });
});

describe('check', () => {
  it('prints an empty list for a good chart and exits 0', () => {
    expect(at('check ferry')).toMatchObject({ code: 0, out: '[]\n' });
  });

  it('prints every fault with its place and exits 1, also from arrange', () => {
    const files = { bad: 'title: Fog\n[A]\n| Em7 | h7 |\n| C D E F G |\n' };
    const { code, out, err } = at('check bad', files);
    const faults = JSON.parse(out) as { line: number; column: number; text: string }[];
    expect([code, err]).toEqual([1, '']);
    expect(faults.map(({ line, column, text }) => [line, column, text])).toEqual([
      [3, 9, 'h7'],
      [4, 3, 'C D E F G'],
    ]);
    expect(faults.map((fault) => Object.keys(fault))).toEqual(faults.map(() => ['line', 'column', 'text', 'expected', 'nearest']));
    const arranged = at('arrange bad', files);
    expect([arranged.code, arranged.out]).toEqual([1, out]);
    expect(arranged.err).toMatch(/^Line 3, column 9, “h7”\. Expected: .*\nLine 4, column 3, .*\n$/);
    expect(at('export bad --format midi --out a.mid', files)).toMatchObject({ code: 1, out: '' });
  });

  it('says on standard error that a section comes back on the other side', () => {
    const { code, out, err } = at('check odd', { odd: 'form: A, B, A\n[A]\n| Em7 | A7 |\n[B]\n| Gm7 |\n' });
    expect([code, out]).toEqual([0, '[]\n']);
    expect(err).toContain('A comes back on the 3-side, and the figure goes along; if that surprises you, count the bars before.\n');
  });
});

describe('chord, clave and alignment', () => {
  it('describes chords one a line, and says what is wrong with one that cannot be read', () => {
    const { code, out } = at('chord D6/9 C7/Bb H7');
    expect(code).toBe(0);
    expect(jsonLines(out)).toEqual([
      {
        symbol: 'D6/9',
        root: 'D',
        bass: null,
        degrees: ['1', '3', '5', '6', '9'],
        tones: ['D', 'F#', 'A', 'B', 'E'],
        pcs: [2, 4, 6, 9, 11],
      },
      { symbol: 'C7/Bb', root: 'C', bass: 'Bb', degrees: ['1', '3', '5', 'b7'], tones: ['C', 'E', 'G', 'Bb'], pcs: [0, 4, 7, 10] },
      { symbol: 'H7', error: expect.stringContaining('"H"') },
    ]);
  });

  it('prints a clave as grid and steps', () => {
    // R. Santos, "Patrones de songo y salsa" (2009); the bell from a timbales pattern sheet.
    expect(JSON.parse(at('clave --format json').out)).toEqual({
      kind: 'son',
      direction: '2-3',
      grid: '..x.x... x..x..x.',
      steps: [2, 4, 8, 11, 14],
    });
    expect(JSON.parse(at('clave --kind rumba --clave 3-2').out)).toEqual({
      kind: 'rumba',
      direction: '3-2',
      grid: 'x..x...x ..x.x...',
      steps: [0, 3, 7, 10, 12],
    });
    expect(JSON.parse(at('clave --kind bembe --clave=3-2').out)).toEqual({
      kind: 'bembe',
      direction: '3-2',
      grid: 'x.x.xx .x.x.x',
      steps: [0, 2, 4, 5, 7, 9, 11],
    });
    expect(at('clave --format grid').out).toBe('..x.x... x..x..x.\n');
  });

  it('says what rhythms state, with a verdict only against a clave', () => {
    const montuno = 'x.xx.x.x .x.x.x.x';
    const asked = run(['alignment', montuno, '.x.x.x.xx.xx.x.x', '--clave', '2-3'], world());
    expect(jsonLines(asked.out)).toMatchObject([
      { grid: montuno, states: '2-3', verdict: 'aligned' },
      { grid: '.x.x.x.xx.xx.x.x', states: '3-2', verdict: 'crossed' },
    ]);
    const [open] = jsonLines(run(['alignment', montuno], world()).out) as Record<string, unknown>[];
    expect(Object.keys(open ?? {})).toEqual(['grid', 'states', 'score', 'verdict', 'reason']);
    expect(open).toMatchObject({ verdict: null, score: expect.any(Number), reason: expect.stringMatching(/\.$/) });
    expect(open?.score).toBeGreaterThan(0);
  });
});

describe('arrange, explain and export', () => {
  it('passes every option on', () => {
    const command =
      'arrange ferry --clave 3-2 --kind rumba --level 3 --device octave-up --device octaves-only --hands right --colour jazz --style cha-cha --seed 7 --vamp 2 --open --pickup';
    const score = JSON.parse(at(command).out);
    expect(score).toMatchObject({
      clave: { kind: 'rumba', direction: '3-2' },
      level: 3,
      devices: ['octave-up', 'octaves-only'],
      style: 'cha-cha-cha',
      closed: false,
    });
    expect(score.parts.leftHand).toEqual([]);
  });

  it('writes a figure of the player in the direction that is asked for', () => {
    const rhythm = (line: string) => [...new Set(JSON.parse(at(line).out).parts.rightHand.map(({ tick }: { tick: number }) => tick))];
    const first = (ticks: unknown[]) => ticks.filter((tick) => Number(tick) < 3840).map((tick) => Number(tick) / 240);
    const figure = '--hands right --figure=x..x..x..x..x...';
    expect(first(rhythm(`arrange ferry ${figure}`))).toEqual([0, 3, 6, 9, 12]);
    expect(first(rhythm(`arrange ferry ${figure} --clave 3-2`))).toEqual([0, 3, 6, 9, 12]);
  });

  it('keeps to the stretch, the keys, the percussion and the exercise that are asked for', () => {
    const score = JSON.parse(
      at('arrange ferry --stretch less-than-an-octave --keys 61 --percussion mambo-bell,conga-one-drum --crossed').out,
    );
    // The player of the mambo bell strikes the hits of bar 8 on the timbales.
    expect(Object.keys(score.parts.percussion)).toEqual(['mambo bell', 'timbales', 'conga']);
    expect(score.alignment.verdict).toBe('crossed');
    // 61 keys run from C2 to C7 (MIDI 36 to 96): common practice, no source.
    const midi = [...score.parts.rightHand, ...score.parts.leftHand].flatMap((stroke: { midi: number[] }) => stroke.midi);
    expect(Math.min(...midi)).toBeGreaterThanOrEqual(36);
    expect(Math.max(...midi)).toBeLessThanOrEqual(96);
    for (const { midi: hand } of score.parts.rightHand) expect(hand.at(-1) - hand[0]).toBeLessThan(12);
  });

  it('plays cells chosen by hand, a solo, and levels by section without --level', () => {
    const onsets = (line: string) => at(line).out;
    expect(onsets('arrange ferry --cells A4+B2')).not.toBe(onsets('arrange ferry'));
    expect(onsets('arrange ferry --solo example')).not.toBe(onsets('arrange ferry --solo scaffold'));
    const roles = `${FERRY}\n[Coro, role: coro]\n| Em7 | A7 | D6 | B7b9 ||\n[Mambo, role: mambo]\n| Em7 | A7 | D6 | B7b9 ||\n`;
    const levels = (line: string) => JSON.parse(at(line, { roles }).out).bars.map(({ level }: { level: number }) => level);
    expect(new Set(levels('arrange roles')).size).toBeGreaterThan(1);
    expect(new Set(levels('arrange roles --level 3'))).toEqual(new Set([3]));
  });

  it('gives the same text for the same line, byte for byte', () => {
    expect(at('arrange ferry --seed 3').out).toBe(at('arrange ferry --seed 3').out);
  });

  it('prints a grid of the cycles with the clave under the counts', () => {
    const { code, out } = at('arrange ferry --format grid');
    expect(code).toBe(0);
    const rows = out.split('\n');
    expect(rows[0]).toBe('Last Ferry · D · son 2-3 · half = 92 · salsa · level 2');
    expect(rows.filter((row) => row.startsWith('count'))).toHaveLength(4);
    const count = rows.find((row) => row.startsWith('count')) ?? '';
    const clave = rows.find((row) => row.startsWith('clave')) ?? '';
    const struck = [...clave].flatMap((sign, column) => (sign === 'x' ? [count[column]] : []));
    expect(struck.join(' ')).toBe('2 3 1 & 4');
    expect(rows.some((row) => row.startsWith('right') && row.includes("O'"))).toBe(true);
    expect(out).toContain('A: bar 8, 3-side, hit');
  });

  it('explains every stroke of a bar', () => {
    const { code, out } = at('explain ferry --bar 2');
    const rows = out.trimEnd().split('\n');
    const score = JSON.parse(at('arrange ferry').out);
    const strokes = [score.parts.rightHand, score.parts.leftHand, score.parts.bass]
      .flat()
      .filter((stroke) => stroke.tick >= 1920 && stroke.tick < 3840);
    expect(code).toBe(0);
    expect(rows[0]).toBe('Bar 2, A, 3-side: A7');
    expect(rows).toHaveLength(1 + strokes.length);
    for (const stroke of strokes) expect(out).toContain(stroke.why[0]);
  });

  it('writes a MIDI file that another reader opens', () => {
    const files = world();
    expect(run(['export', 'ferry', '--format', 'midi', '--out', 'ferry.mid'], files)).toEqual({ code: 0, out: '', err: '' });
    const midi = parseMidi(files.written.get('ferry.mid') ?? new Uint8Array());
    expect([midi.header.format, midi.header.ticksPerBeat]).toEqual([1, 480]);
    const struck = midi.tracks.flat().flatMap((event) => (event.type === 'noteOn' && event.velocity > 0 ? [event] : []));
    const notes = struck.filter(({ channel }) => channel !== 9);
    const drums = struck.length - notes.length;
    const score = JSON.parse(at('arrange ferry').out);
    const pitched = [score.parts.rightHand, score.parts.leftHand, score.parts.bass]
      .flat()
      .reduce((sum: number, stroke) => sum + stroke.midi.length, 0);
    expect(notes.length).toBe(pitched);
    // Rolls are written as several blows, so the drums are at least as many as their strokes.
    const percussion = Object.values<unknown[]>(score.parts.percussion).reduce((sum, strokes) => sum + strokes.length, 0);
    expect(drums).toBeGreaterThanOrEqual(score.parts.clave.length + percussion);
    expect(percussion).toBeGreaterThan(0);
  });

  it('writes MusicXML with the day, compressed where the name ends in .mxl, and feel into MIDI alone', () => {
    const files = world();
    const write = (...words: string[]) => run(['export', 'ferry', ...words], files);
    expect(write('--format', 'musicxml', '--out', 'ferry.musicxml')).toEqual({ code: 0, out: '', err: '' });
    const xml = new TextDecoder().decode(files.written.get('ferry.musicxml'));
    expect(xml).toContain('<encoding-date>2026-11-25</encoding-date>');
    expect(write('--format', 'musicxml', '--out', 'ferry.mxl').code).toBe(0);
    expect(new TextDecoder().decode(unzipSync(files.written.get('ferry.mxl') ?? new Uint8Array())['score.musicxml'])).toBe(xml);
    expect(write('--format', 'midi', '--out', 'a.mid', '--feel', 'measured').code).toBe(0);
    expect(write('--format', 'midi', '--out', 'b.mid', '--feel', 'straight').code).toBe(0);
    expect(write('--format', 'midi', '--out', 'c.mid').code).toBe(0);
    expect(files.written.get('b.mid')).toEqual(files.written.get('c.mid'));
    expect(files.written.get('a.mid')).not.toEqual(files.written.get('c.mid'));
  });

  it('prints the chart of a score file, with what was left out on standard error, and one sentence for a file that is none', () => {
    const files = world();
    run(['export', 'ferry', '--format', 'musicxml', '--out', 'ferry.musicxml', '--open'], files);
    const xml = new TextDecoder().decode(files.written.get('ferry.musicxml'));
    const { code, out, err } = run(['import', 'ferry.musicxml'], world({ 'ferry.musicxml': xml }));
    expect(code).toBe(0);
    expect(out).toContain('| Em7 C7 | A7b9 | D6/9 | D6/9 |');
    expect(run(['check', 'back'], world({ back: out }))).toMatchObject({ code: 0, out: '[]\n' });
    expect(err).toContain('notes were left out');
    expect(run(['import', 'ferry'], world())).toEqual({
      code: 1,
      out: '',
      err: expect.stringMatching(/^This is no score file\. Expected: .*\.\n$/),
    });
    expect(run(['import'], world()).code).toBe(2);
    expect(run(['import', 'a', 'b'], world()).code).toBe(2);
  });

  it('reads the chart of - from the world, and -- ends options', () => {
    expect(run(['check', '-'], world({ '-': FERRY })).code).toBe(0);
    expect(run(['check', '--', '-'], world({ '-': FERRY })).code).toBe(0);
    expect(run(['check', '--', '--open'], world({ '--open': FERRY })).code).toBe(0);
  });

  it('writes a WAV file of exactly the loop, or with count-in and tail', async () => {
    const files = world();
    // 8 bars at 92 half notes a minute: 16 half notes of 60/92 s.
    const loop = (16 * 60) / 92;
    const wav = async (more: string) => {
      const { rest } = run(`export ferry --format wav --out f.wav ${more}`.trim().split(' '), files);
      expect(await rest?.()).toEqual({ code: 0, out: '', err: '' });
      return readWav(files.written.get('f.wav') ?? new Uint8Array());
    };
    expect((await wav('')).left.length).toBe(Math.round(loop * 44_100));
    const long = await wav('--rate 48000 --passes 2 --count-in 2 --tail 3');
    expect([long.rate, long.left.length]).toEqual([48_000, Math.round((2 * loop + loop / 4) * 48_000) + 3 * 48_000]);
    expect((await wav('--tempo 60')).left.length).toBe(16 * 44_100);
  });

  it('packs the same files for every key asked for, in a folder or in one zip', async () => {
    const files = world();
    const { rest } = run('pack ferry --out to --keys all --holds midi,musicxml --tempi 70,92'.split(' '), files);
    const done = await rest?.();
    expect(done?.code).toBe(0);
    const paths = [...files.written.keys()];
    expect(done?.out.trim().split('\n')).toEqual(paths);
    expect(paths).toHaveLength(1 + 12 * 3);
    const keys = paths.flatMap((path) => (path.endsWith('.mid') ? [parseMidi(files.written.get(path) ?? new Uint8Array())] : []));
    // Twelve key signatures (sharps less flats of the twelve major keys, F sharp or G flat), each at two tempi.
    const signatures = keys.map(({ tracks }) => tracks.flat().find((event) => event.type === 'keySignature')?.key ?? Number.NaN);
    expect(new Set(signatures.map((sharps) => (((sharps * 7) % 12) + 12) % 12)).size).toBe(12);
    const zip = run('pack ferry --out to.zip --holds midi --keys D,C#'.split(' '), files);
    expect((await zip.rest?.())?.code).toBe(0);
    const inside = Object.keys(unzipSync(files.written.get('to.zip') ?? new Uint8Array()));
    expect(inside).toEqual(['contents.html', expect.stringMatching(/^01_D\/.*\.mid$/), expect.stringMatching(/^02_D-flat\/.*\.mid$/)]);
  });
});
