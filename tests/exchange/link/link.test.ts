import fc from 'fast-check';
import { deflateSync, strToU8 } from 'fflate';
import { describe, expect, it } from 'vitest';
import { fromBase64Url, toBase64Url } from '../../../src/exchange/link/base64url';
import { checksum } from '../../../src/exchange/link/checksum';
import { type Lesson, LONGEST_LINK } from '../../../src/exchange/link/lesson';
import { makeLink } from '../../../src/exchange/link/make-link';
import { LONGEST_CODE, qrPath } from '../../../src/exchange/link/qr-path';
import { readLink } from '../../../src/exchange/link/read-link';
import { DEMO_BOOK } from '../../../src/music/chart/demo-book';

const SETTINGS = { level: 3, tempo: 70, goalTempo: 92, direction: '3-2', kind: 'son', transpose: 2, hands: 'double' };
const lesson = (text: string, note = ''): Lesson => ({ text, note, settings: SETTINGS });
const made = (one: Lesson): string => {
  const link = makeLink(one);
  if (!link.ok) throw new Error(JSON.stringify(link.faults));
  return link.value;
};
/** A link with any bytes inside and the checksum that belongs to `json`. */
const packed = (json: Uint8Array, version = 1, body = deflateSync(json)): string => {
  const bytes = new Uint8Array(body.length + 4);
  new DataView(bytes.buffer).setUint32(0, checksum(json), true);
  bytes.set(body, 4);
  return `#l=${version}.${toBase64Url(bytes)}`;
};
const code = (hash: string) => {
  const read = readLink(hash);
  return read.ok ? 'ok' : read.faults[0]?.code;
};

describe('The parts of a link', () => {
  it('are the checksum of ISO 3309: its check value for "123456789"', () => {
    // The catalogue of parametrised CRC algorithms gives CBF43926 as the check value of CRC-32/ISO-HDLC.
    expect(checksum(strToU8('123456789'))).toBe(0xcbf43926);
  });

  it('are base64url as RFC 4648, section 10, writes its examples, without padding', () => {
    const examples = [
      ['', ''],
      ['f', 'Zg'],
      ['fo', 'Zm8'],
      ['foo', 'Zm9v'],
      ['foob', 'Zm9vYg'],
      ['fooba', 'Zm9vYmE'],
      ['foobar', 'Zm9vYmFy'],
    ] as const;
    for (const [plain, text] of examples) {
      expect(toBase64Url(strToU8(plain))).toBe(text);
      expect(fromBase64Url(text)).toEqual(strToU8(plain));
    }
    fc.assert(
      fc.property(fc.uint8Array(), (bytes) => {
        expect(toBase64Url(bytes)).toBe(Buffer.from(bytes).toString('base64url'));
        expect(fromBase64Url(toBase64Url(bytes))).toEqual(bytes);
      }),
    );
    expect([fromBase64Url('a'), fromBase64Url('a b='), fromBase64Url('ä')]).toEqual([null, null, null]);
  });
});

describe('A link', () => {
  it('gives back what went in, whatever was typed', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 400 }), fc.string({ unit: 'grapheme', maxLength: 200 }), (typed, note) => {
        const text = typed.replace(/\r\n?/g, '\n');
        const read = readLink(made(lesson(text, note)));
        expect(read).toEqual({ ok: true, value: lesson(text, note) });
      }),
    );
  });

  it('of every demo chart is short enough for a code that a camera reads', () => {
    for (const { text } of DEMO_BOOK) {
      const address = `https://quay-street.example/contratiempo/${made(lesson(text, 'Slowly, left hand first.'))}`;
      expect(address.length).toBeLessThan(LONGEST_CODE);
      expect(qrPath(address)).not.toBeNull();
    }
  });

  it('of version 1 is read for as long as the program lives', () => {
    // Made once by version 1 and never changed.
    const link = VERSION_1;
    expect(readLink(link)).toEqual({
      ok: true,
      value: { text: 'title: Low Tide\n| Gm7 | C7 |\n', note: 'Slowly.', settings: { level: 2 } },
    });
  });

  it('that does not fit says how long it would be', () => {
    // Marsaglia's xorshift: text that no packing shortens much.
    let state = 2463534242;
    const sign = (): string => {
      state ^= state << 13;
      state ^= state >>> 17;
      state ^= state << 5;
      return String.fromCharCode(33 + ((state >>> 0) % 90));
    };
    const noise = Array.from({ length: 12_000 }, sign).join('');
    expect(makeLink(lesson(noise))).toMatchObject({ ok: false, faults: [{ code: 'too long' }] });
    expect(makeLink(lesson('x'.repeat(70_000)))).toMatchObject({ ok: false, faults: [{ code: 'too much inside' }] });
  });
});

describe('A hostile link', () => {
  it('that unpacks to a hundred megabytes is stopped at the first byte too many', () => {
    const bomb = packed(strToU8(''), 1, deflateSync(new Uint8Array(5_000_000), { level: 9 }));
    expect(bomb.length).toBeLessThan(LONGEST_LINK);
    const before = process.memoryUsage().arrayBuffers;
    expect(code(bomb)).toBe('too much inside');
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(2_000_000);
  });

  it('of a megabyte is refused by its length alone', () => {
    expect(code(`#l=1.${'A'.repeat(1_000_000)}`)).toBe('too long');
  });

  it('of another version, cut short, with a letter changed or with anything else inside is refused with its reason', () => {
    const good = made(lesson('| C | G7 |\n', 'Slowly.'));
    expect(code(good)).toBe('ok');
    expect(code(good.replace('#l=1.', '#l=2.'))).toBe('newer version');
    expect(code(good.replace('#l=1.', '#l=0.'))).toBe('damaged');
    expect(code('#l=')).toBe('damaged');
    expect(code('#/practise')).toBe('no link');
    for (let cut = 6; cut < good.length; cut += 1) expect(code(good.slice(0, cut))).toBe('damaged');
    for (let at = 5; at < good.length - 1; at += 1) {
      const changed = good.slice(0, at) + (good[at] === 'A' ? 'B' : 'A') + good.slice(at + 1);
      expect(code(changed), `letter ${at}`).not.toBe('ok');
    }
    for (const json of [
      'null',
      '{}',
      '[]',
      '["a"]',
      '["a",null,"b"]',
      '[1,{},""]',
      `["a",{},${JSON.stringify('n'.repeat(2001))}]`,
      'no json',
    ])
      expect(code(packed(strToU8(json))), json).toBe('no lesson');
  });

  it('brings no setting that is unknown, no object and no name of the language', () => {
    const read = readLink(
      packed(strToU8('["a",{"level":{"a":1},"tempo":9e99,"theme":"night","__proto__":{"direction":"3-2"},"direction":"up"},""]')),
    );
    expect(read.ok && read.value.settings).toEqual({ tempo: 9e99, direction: 'up' });
  });

  it('never throws and never takes long: ten thousand of them', () => {
    const good = made(lesson(DEMO_BOOK[0]?.text ?? ''));
    let slowest = 0;
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string().map((text) => `#l=1.${text}`),
          fc.base64String().map((text) => `#l=1.${text}`),
          fc.uint8Array({ maxLength: 300 }).map((bytes) => packed(strToU8('x'), 1, bytes)),
          fc
            .tuple(fc.nat(good.length), fc.string({ maxLength: 3 }))
            .map(([at, put]) => good.slice(0, at) + put + good.slice(at + put.length)),
          fc.json().map((json) => packed(strToU8(json))),
        ),
        (hash) => {
          const from = performance.now();
          readLink(hash);
          slowest = Math.max(slowest, performance.now() - from);
        },
      ),
      { numRuns: 10_000 },
    );
    // The bound on one link is 50 ms; a busy machine is given room.
    expect(slowest).toBeLessThan(500);
  });
});

const VERSION_1 = '#l=1.Ab_sCotWKsksyUm1UvDJL1cIyUxJjcmrUXDPNVeoUXAGEjF5SjrVSjmpZak5SlZGtTpKwTn55TmVekqxAA';
