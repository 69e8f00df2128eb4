import fc from 'fast-check';

/** Chart texts of every kind that the chart language allows, in many layouts, for property tests and the fuzz run. */

const SYMBOLS = [
  'C',
  'Dm',
  'Em7',
  'A7',
  'D6',
  'B7b9',
  'A7b9',
  'D6/9',
  'Fmaj7',
  'Em7b5',
  'A7alt',
  'Gm7',
  'C7',
  'F#m7b5',
  'Bb13',
  'Ebmaj7',
  'Ab',
  'Db7(#11)',
  'B♭7',
  'F♯-7',
  'C∆',
  'Bø7',
  'Gsus4',
  'G7sus4',
  'D/F#',
  'Am7/G',
  'Edim7',
  'C+',
  'Cm6',
  'Cm(maj7)',
  'F9',
  'E7#9',
  'C5',
  'Eb6',
] as const;
const symbol = fc.constantFrom(...SYMBOLS);
const pushed = fc.tuple(symbol, fc.nat(9)).map(([name, chance]) => (chance === 0 ? `>${name}` : name));
const maybe = <T>(value: fc.Arbitrary<T>, freq = 3): fc.Arbitrary<T | null> => fc.option(value, { freq, nil: null });

const words = fc.oneof(
  { weight: 4, arbitrary: pushed },
  { weight: 3, arbitrary: fc.tuple(pushed, pushed).map((pair) => pair.join(' ')) },
  { weight: 1, arbitrary: fc.array(pushed, { minLength: 4, maxLength: 4 }).map((four) => four.join(' ')) },
  {
    weight: 2,
    arbitrary: fc
      .tuple(pushed, fc.array(fc.oneof(fc.constant('/'), pushed, fc.constant('N.C.')), { minLength: 2, maxLength: 2 }), fc.constant('/'))
      .map(([first, two, last]) => [first, ...two, last].join(' ')),
  },
  { weight: 1, arbitrary: fc.constantFrom('%', '%', 'N.C.', 'NC', 'stop', 'rest 2', 'rest', '/ / / /', 'Stop', '%%') },
);
const hits = fc
  .uniqueArray(fc.constantFrom('1', '1&', '2', '2&~', '3', '3&', '4', '4&~'), { minLength: 1, maxLength: 4 })
  .map((list) => `{${list.join(' ')}}`);
const bar = fc
  .tuple(words, maybe(hits, 6))
  .map(([text, stroke]) => (stroke !== null && !/rest|%/i.test(text) ? `${text} ${stroke}` : text));
const shortBar = fc
  .tuple(
    fc.constantFrom('(2/4)'),
    fc.oneof(
      symbol,
      fc.tuple(symbol, symbol).map((pair) => pair.join(' ')),
    ),
  )
  .map((parts) => parts.join(' '));
const bars = fc.array(fc.oneof({ weight: 12, arbitrary: bar }, { weight: 1, arbitrary: shortBar }), { minLength: 1, maxLength: 6 });

/** A passage as pieces: a bar is one string, a barline other than `|` is one that begins or ends with `|`. */
const plain = bars.map((list) => ({ open: '|', parts: list.map((text) => [text, '|'] as const) }));
const doubled = bars.map((list) => ({
  open: '|',
  parts: list.map((text, index) => [text, index === list.length - 1 ? '||' : '|'] as const),
}));
const repeated = fc.tuple(bars, fc.constantFrom(':|', ':| x3', ':|| x4', ':||')).map(([list, end]) => ({
  open: '|:',
  parts: list.map((text, index) => [text, index === list.length - 1 ? end : '|'] as const),
}));
const ended = fc.tuple(bars, bars, bars, fc.boolean()).map(([body, one, two, three]) => ({
  open: '|:',
  parts: [
    ...body.map((text, index) => [text, index === body.length - 1 ? (three ? '|1,2.' : '|1.') : '|'] as const),
    ...one.map((text, index) => [text, index === one.length - 1 ? (three ? ':|3.' : ':|2.') : '|'] as const),
    ...two.map((text, index) => [text, index === two.length - 1 ? '||' : '|'] as const),
  ],
}));
const passage = fc.oneof({ weight: 3, arbitrary: plain }, doubled, repeated, ended);

const direction = fc.constantFrom('2-3', '3-2');
const attributes = fc
  .record({
    role: maybe(fc.constantFrom('intro', 'verse', 'coro', 'mambo', 'piano solo', 'percussion solo', 'break', 'coda')),
    times: maybe(fc.integer({ min: 1, max: 9 }), 4),
    cue: maybe(fc.constantFrom('on cue', 'open'), 5),
    restart: maybe(direction, 6),
    expects: maybe(direction, 6),
    style: maybe(fc.constantFrom('salsa', 'Bolero', 'swing', 'cha-cha-chá', 'bossa nova'), 5),
    key: maybe(fc.constantFrom('Dm', 'Bb', 'F#m', 'E♭'), 5),
    tempo: maybe(fc.constantFrom('half = 96', 'quarter=181', 'half = 70.5'), 6),
    figure: maybe(fc.constantFrom('x.xx.x.x .x.xx.x.', 'xxx.x.x.'), 8),
  })
  .map(({ role, times, cue, restart, expects, style, key, tempo, figure }) =>
    [
      role && `role: ${role}`,
      times && `x${times}`,
      cue,
      restart && `clave restart ${restart}`,
      expects && `clave: ${expects}`,
      style && `style: ${style}`,
      key && `key:${key}`,
      tempo && `tempo: ${tempo}`,
      figure && `figure: ${figure}`,
    ].filter((text): text is string => text !== null && text !== 0),
  );

const section = fc.record({ attributes: fc.tuple(attributes, fc.nat(1000)), passages: fc.array(passage, { minLength: 1, maxLength: 3 }) });
const headers = fc.record({
  title: maybe(fc.constantFrom('Last Ferry', '<script>alert(1)</script>', 'Ñandú & "sons"', 'a: b | c [d]'), 4),
  key: maybe(fc.constantFrom('D', 'Dm', 'Bb', 'F# minor', 'C'), 4),
  clave: maybe(fc.constantFrom('2-3 son', '3-2 rumba', '3–2 son', '2-3', 'rumba 2-3'), 4),
  tempo: maybe(fc.constantFrom('half = 92', 'quarter=184', 'half = 25', 'quarter = 280', 'half = 92.25'), 4),
  style: maybe(fc.constantFrom('salsa', 'Son Montuno', 'latin jazz', 'merengue'), 4),
  meter: maybe(fc.constantFrom('4/4', 'cut'), 5),
  changes: maybe(fc.constantFrom('on the beat', 'as played'), 5),
  figure: maybe(fc.constantFrom('x.xx.x.x .x.xx.x.', 'o.oi.i.o .o.i.i.o'), 6),
});
const comment = fc.constantFrom(' watch the break', '', '; twice', ' | C | [x] form: A', 'tail  ');

/** One chart text. The first bar is a plain chord, so that every `%` and `/` has something before it. */
export const chartText: fc.Arbitrary<string> = fc
  .record({
    headers,
    sections: fc.array(section, { minLength: 1, maxLength: 4 }),
    first: symbol,
    headed: fc.boolean(),
    form: maybe(fc.array(fc.nat(3), { minLength: 1, maxLength: 6 }), 2),
    formFirst: fc.boolean(),
    noise: fc.array(fc.nat(99), { minLength: 8, maxLength: 40 }),
    comment,
  })
  .map(({ headers: head, sections, first, headed, form, formFirst, noise, comment: remark }) => {
    let turn = 0;
    const roll = (sides: number): number => (noise[turn++ % noise.length] ?? 0) % sides;
    const lines: string[] = [];
    const line = (text: string): void => {
      const chance = roll(12);
      if (chance === 0) lines.push('');
      if (chance === 1) lines.push(`${roll(2) ? '  ' : ''};${remark}`);
      lines.push(chance === 2 ? `${text} ;${remark}` : text);
    };
    const names = sections.map((_, index) => `${['A', 'B', 'Coro', 'Mambo 2'][index]}`);
    const formLine = form && `form: ${form.map((pick) => names[pick % names.length]).join(', ')}`;
    for (const [name, value] of Object.entries(head))
      if (value !== null) line(`${roll(2) ? '' : ' '}${roll(3) ? name : name.toUpperCase()}:${roll(2) ? ' ' : ''}${value}`);
    if (formLine && headed && formFirst) line(formLine);
    sections.forEach(({ attributes: [list], passages }, index) => {
      const title = `[${[names[index], ...list].join(roll(2) ? ', ' : ' ,  ')}]`;
      let row = '';
      if (index > 0 || headed) {
        if (roll(4) === 0) row = `${title} `;
        else line(title);
      }
      if (index === 0) row += `| ${first} | ${first} `;
      for (const { open, parts } of passages) {
        if (!(open === '|' && row.trimEnd().endsWith('|'))) row += open;
        parts.forEach(([text, barline], at) => {
          row += `${roll(3) ? ' ' : ''}${text}${roll(3) ? ' ' : '  '}${barline}`;
          if (barline.endsWith('.')) row += ' ';
          if (roll(6) === 0) {
            line(row);
            row = roll(2) && at < parts.length - 1 ? '| ' : '';
          }
        });
        row += ' ';
      }
      if (row.trim() !== '') line(row);
    });
    if (formLine && (headed || sections.length === 1) && !(headed && formFirst)) line(formLine);
    return lines.join(roll(4) === 0 ? '\r\n' : '\n');
  });
