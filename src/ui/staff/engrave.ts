/**
 * The drawing leaf: one system of notation as one SVG, by VexFlow. Places come from layout/notation/system-geometry, notes from
 * layout/notation; VexFlow contributes glyphs, stems, flags and beams. Ties, barlines, chord symbols and counts are drawn from our own places,
 * because VexFlow repeats accidentals on tied notes and sets chord symbols at differing heights. Loaded on demand: import it with `import()` alone.
 */
import { Formatter, Renderer, Stave, type StaveNote, type SVGContext, VexFlow, Voice } from 'vexflow/core';
import { isLine, type Notation, STAVES, type StaffBar, type StaffName } from '../../layout/notation/notation';
import { headX } from '../../layout/notation/system-geometry';
import { drawBars } from './draw-bars';
import { drawMarks, drawOctaveLines } from './draw-marks';
import { drawTexts } from './draw-texts';
import { drawTies, type PlacedNote } from './draw-ties';
import { MUSIC_FONTS } from './music-fonts';
import type { DrawnNote, SystemDrawing } from './system-drawing';
import { beamsOf, staveNote } from './vex-notes';

/** VexFlow counts 4096 ticks to the quarter, we 480. */
const OUR_TICKS = 480 / 4096;
/** Staff lines above a stave's origin, VexFlow's own headroom. */
const HEADROOM = 40;
/** VexFlow adds this between the start of notes and the first note. */
const STAVE_PADDING = 12;
/** How far a tie that rings on ends before the dots of a repeat. */
const REPEAT_ROOM = 18;
/** Half the width of a whole rest. */
const HALF_REST = 6;
const INK = { fillStyle: 'currentColor', strokeStyle: 'currentColor' };

/** Draws a system into `host`, replacing what it held. Music fonts must be loaded. Returns the notes, in order of time within each staff. */
export function engraveSystem(host: HTMLDivElement, drawing: SystemDrawing): DrawnNote[] {
  host.replaceChildren();
  VexFlow.setFonts(MUSIC_FONTS.music, MUSIC_FONTS.text);
  const { geometry } = drawing;
  const context = new Renderer(host, Renderer.Backends.SVG).getContext() as SVGContext;
  context.resize(geometry.width, geometry.height);
  context.svg.setAttribute('viewBox', `0 0 ${geometry.width} ${geometry.height}`);
  Object.assign(context.svg.style, { display: 'block', width: '100%', height: 'auto' });
  context.svg.setAttribute('aria-hidden', 'true');
  context.setFillStyle('currentColor');
  context.setStrokeStyle('currentColor');
  const placed: Record<StaffName, PlacedNote[]> = { clave: [], rhythm: [], right: [], left: [], bass: [] };
  geometry.bars.forEach((_, i) => {
    for (const note of drawBar(context, drawing, i)) placed[note.staff].push(note);
  });
  drawBars(context, drawing);
  for (const staff of STAVES) {
    drawTies(context, placed[staff], drawing);
    drawMarks(context.svg, placed[staff], drawing);
  }
  drawOctaveLines(context.svg, geometry);
  drawTexts(context.svg, drawing);
  return Object.values(placed).flatMap((notes) => notes.flatMap(drawnNote));
}

function drawnNote(placed: PlacedNote): DrawnNote[] {
  const element = placed.note.getSVGElement();
  if (!element || placed.event.kind === 'rest' || placed.event.kind === 'gap') return [];
  const tick = placed.barTick + placed.event.tick;
  return [{ tick, endTick: tick + placed.event.ticks, element }];
}

function drawBar(context: SVGContext, drawing: SystemDrawing, i: number): PlacedNote[] {
  const { geometry, notation } = drawing;
  const bar = notation.bars[drawing.from + i];
  const place = geometry.bars[i];
  if (!bar || !place) return [];
  const shown = STAVES.filter((staff) => geometry.lines[staff] !== undefined);
  for (const staff of shown) if (bar.staves[staff].events.length === 0) drawStave(context, drawing, i, staff);
  const sounding = shown.filter((staff) => bar.staves[staff].events.length > 0);
  if (sounding.length === 0) return [];
  const parts = sounding.map((staff) => {
    const stave = drawStave(context, drawing, i, staff);
    const notes = bar.staves[staff].events.map((event) => staveNote(event, isLine(staff) ? null : notation.clefs[staff]).setStave(stave));
    return { staff, stave, notes, voice: voiceOf(notes, stave) };
  });
  const formatter = new Formatter();
  for (const part of parts) formatter.joinVoices([part.voice]);
  formatter.format(
    parts.map((part) => part.voice),
    place.width,
  );
  const columns = formatter.getTickContexts();
  for (const vexTick of columns?.list ?? []) {
    const tick = bar.tick + Math.round((vexTick / (columns?.resolutionMultiplier ?? 1)) * OUR_TICKS * notation.scale);
    columns?.map[vexTick]?.setX(headX(geometry, tick) - place.noteStart - STAVE_PADDING);
  }
  formatter.postFormat();
  return parts.flatMap((part) => {
    centreWholeBarRest(part.notes, bar.staves[part.staff], place.noteStart, place.x + place.width);
    // Beams take the length of stems from the final places of the notes.
    const beams = beamsOf(bar.staves[part.staff], part.notes);
    part.voice.setContext(context).drawWithStyle();
    // What is left out for the reader takes its room but draws nothing.
    part.notes.forEach((note, n) => {
      if (bar.staves[part.staff].events[n]?.kind === 'gap') note.getSVGElement()?.remove();
    });
    for (const beam of beams) beam.setStyle(INK).setContext(context).drawWithStyle();
    return part.notes.flatMap((note, n): PlacedNote[] => {
      const event = bar.staves[part.staff].events[n];
      return event ? [{ staff: part.staff, note, event, barTick: bar.tick, endRoom: place.repeatEnd ? REPEAT_ROOM : 0 }] : [];
    });
  });
}

function voiceOf(notes: StaveNote[], stave: Stave): Voice {
  return new Voice().setMode(Voice.Mode.SOFT).addTickables(notes).setStave(stave);
}

function drawStave(context: SVGContext, drawing: SystemDrawing, i: number, staff: StaffName): Stave {
  const { geometry, notation } = drawing;
  const place = geometry.bars[i];
  const bar = notation.bars[drawing.from + i];
  const line = geometry.lines[staff] ?? 0;
  // A line is a five-line staff whose middle line alone is drawn, so its notes sit on a line as everywhere else.
  const top = isLine(staff) ? line - 20 : line;
  const stave = new Stave(place?.x ?? 0, top - HEADROOM, place?.width ?? 0, { leftBar: false, rightBar: false });
  stave.setStyle({ ...INK, lineWidth: 1 });
  stave.setDefaultLedgerLineStyle({ ...INK, lineWidth: 1.4 });
  if (isLine(staff)) stave.setConfigForLines([false, false, true, false, false].map((visible) => ({ visible })));
  if (place?.showClef) addClef(stave, staff, notation);
  if (place?.showKey && bar && !isLine(staff))
    stave.addKeySignature(
      keySpec(bar.fifths),
      i > 0 && bar.fifths === 0 ? keySpec(notation.bars[drawing.from + i - 1]?.fifths ?? 0) : undefined,
    );
  if (place?.showMeter && bar) stave.addTimeSignature(bar.meter.kind === 'cut' ? 'C|' : `${bar.meter.beats}/${bar.meter.unit}`);
  for (const modifier of stave.getModifiers()) modifier.setStyle(INK);
  stave.setContext(context).drawWithStyle();
  stave.setNoteStartX(place?.noteStart ?? 0);
  return stave;
}

function addClef(stave: Stave, staff: StaffName, notation: Notation): void {
  if (isLine(staff)) stave.addClef('percussion');
  else if (notation.clefs[staff] === 'bass-8vb') stave.addClef('bass', 'default', '8vb');
  else stave.addClef(notation.clefs[staff]);
}

/** VexFlow names a signature by its major key. */
const keySpec = (fifths: number): string =>
  ['Cb', 'Gb', 'Db', 'Ab', 'Eb', 'Bb', 'F', 'C', 'G', 'D', 'A', 'E', 'B', 'F#', 'C#'][fifths + 7] ?? 'C';

function centreWholeBarRest(notes: readonly StaveNote[], bar: StaffBar, from: number, to: number): void {
  bar.events.forEach((event, n) => {
    const note = notes[n];
    if (!event.wholeBar || !note) return;
    // The formatter's own shift is no number in a bar with one column.
    note.setCenterXShift(0);
    note.setCenterXShift((from + to) / 2 - note.getAbsoluteX() - HALF_REST);
  });
}
