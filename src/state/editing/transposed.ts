import type { Chart } from '../../music/chart/chart';
import { transposeChart } from '../../music/chart/transpose-chart';
import { writeChart } from '../../music/chart/write';

/** The text of `chart` written `semitones` higher (negative: lower): key, keys of sections and chords; lines and comments stay. */
export const transposedText = (chart: Chart, semitones: number): string => writeChart(transposeChart(chart, semitones));
