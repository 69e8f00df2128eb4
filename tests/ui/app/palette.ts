import { readFileSync } from 'node:fs';

/** The colours of a theme by the name of their token, as `#rrggbb`. */
export type Palette = Readonly<Record<string, string>>;
/** Red, green, blue, linear light, 0 to 1. */
type Linear = readonly [number, number, number];

const CSS = readFileSync('src/ui/tokens.css', 'utf8');

/** The hexadecimal colours that a block of the tokens sets; `opening` is the text its selector begins with. */
export function paletteOf(opening: string): Palette {
  const from = CSS.indexOf(opening);
  if (from < 0) throw new Error(`no block ${opening} in tokens.css`);
  const block = CSS.slice(CSS.indexOf('{', from) + 1, CSS.indexOf('}', from));
  return Object.fromEntries([...block.matchAll(/--([a-z-]+): (#[0-9a-f]{6});/g)].map((match) => [match[1] ?? '', match[2] ?? '']));
}

const linear = (hex: string): Linear => {
  const value = (at: number) => {
    const part = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  };
  return [value(1), value(3), value(5)];
};

/** Relative luminance (WCAG 2.2, "relative luminance"; the sRGB weights of IEC 61966-2-1). */
const luminance = ([red, green, blue]: Linear): number => 0.2126 * red + 0.7152 * green + 0.0722 * blue;

/** Contrast ratio of two colours, 1 to 21 (WCAG 2.2, "contrast ratio"). */
export function contrast(one: string, other: string): number {
  const [light, dark] = [luminance(linear(one)), luminance(linear(other))].sort((a, b) => b - a) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

/**
 * Colour vision with one kind of cone missing, as matrices over linear light, at full severity: G. M. Machado, M. M. Oliveira and
 * L. A. F. Fernandes, "A Physiologically-based Model for Simulation of Color Vision Deficiency", IEEE TVCG 15(6), 2009, table of
 * precomputed matrices, severity 1.0. Published; typed from memory.
 */
export const SIMULATIONS = {
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
} as const;

/** Ways of seeing that the palette is checked in. */
export type Seeing = keyof typeof SIMULATIONS | 'full colour' | 'greyscale';

function seen(hex: string, seeing: Seeing): Linear {
  const rgb = linear(hex);
  if (seeing === 'full colour') return rgb;
  if (seeing === 'greyscale') {
    const grey = luminance(rgb);
    return [grey, grey, grey];
  }
  return SIMULATIONS[seeing].map((row) =>
    Math.min(1, Math.max(0, row[0] * rgb[0] + row[1] * rgb[1] + row[2] * rgb[2])),
  ) as unknown as Linear;
}

/** CIE 1976 L*a*b* under D65, from the sRGB primaries (IEC 61966-2-1). */
function lab([red, green, blue]: Linear): Linear {
  const white = [0.95047, 1, 1.08883] as const;
  const xyz = [
    0.4124564 * red + 0.3575761 * green + 0.1804375 * blue,
    0.2126729 * red + 0.7151522 * green + 0.072175 * blue,
    0.0193339 * red + 0.119192 * green + 0.9503041 * blue,
  ];
  const [x = 0, y = 0, z = 0] = xyz.map((value, at) => {
    const share = value / (white[at] ?? 1);
    return share > 216 / 24389 ? Math.cbrt(share) : ((24389 / 27) * share + 16) / 116;
  });
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

/** How far apart two colours look to someone (CIE 1976 ΔE*ab); about 2.3 is the least that is noticed. */
export function difference(one: string, other: string, seeing: Seeing): number {
  const [a, b] = [lab(seen(one, seeing)), lab(seen(other, seeing))];
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}
