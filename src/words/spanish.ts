import { ALIGNMENT_WORDS } from './alignment-sentence';
import { BANNERS } from './banners';
import { CHANGES } from './changes';
import { CHART_EDITOR } from './chart-editor';
import { CHART_SCREEN } from './chart-screen';
import { DRILLS } from './drills';
import { FAULT_WORDS } from './fault';
import { FIGURE_SCREEN } from './figure-screen';
import { FINDINGS } from './findings';
import { FORM_WORDS } from './form-map';
import { GRID_WORDS } from './grid';
import { HABITS_SCREEN } from './habits-screen';
import { SHAPE_WORDS } from './hand-shape';
import { JOURNAL_WORDS } from './journal';
import type { Translation } from './language';
import { LANGUAGE_SCREEN } from './language-screen';
import { LIBRARY_WORDS } from './library';
import { LISTENING } from './listening';
import { NOTICES } from './notice';
import { OWN_FIGURE_SCREEN } from './own-figure-screen';
import { PAGE_NOTICES } from './page-notices';
import { PAD_WORDS } from './rhythm-pad';
import { SCREEN } from './screen';
import { SETTINGS_SCREEN } from './settings-screen';
import { CAMBIOS } from './spanish/changes';
import { CIFRADO, EDITOR } from './spanish/chart';
import { PIEZAS } from './spanish/counting';
import { EJERCICIOS } from './spanish/drills';
import { HALLAZGOS } from './spanish/findings';
import { FORMA } from './spanish/form-map';
import { CUADRICULA } from './spanish/grid';
import { DIARIO } from './spanish/journal';
import { DIRECCIONES, FALTAS } from './spanish/judgements';
import { ESTANTE } from './spanish/library';
import { ACOMPANAR } from './spanish/listening';
import { AJUSTES } from './spanish/more-settings';
import { NOTICIAS } from './spanish/notices';
import { RITMO_PROPIO } from './spanish/rhythm-pad';
import { PANTALLA } from './spanish/screen';
import { AVISOS, AVISOS_DE_EJERCICIO, COSTUMBRES, FIGURA, FIGURA_PROPIA, IDIOMA } from './spanish/settings';
import { MANO } from './spanish/shapes';
import { PORQUES } from './spanish/why';
import { SPOKEN } from './spoken';
import { WHY_WORDS } from './why';

/** Every table in Spanish, with music terms as Cuban and Puerto Rican players use them. Fetched only when Spanish is spoken. */
export const SPANISH: readonly Translation[] = [
  [SPOKEN, PIEZAS],
  [SCREEN, PANTALLA],
  [BANNERS, AVISOS_DE_EJERCICIO],
  [CHANGES, CAMBIOS],
  [CHART_EDITOR, EDITOR],
  [CHART_SCREEN, CIFRADO],
  [FIGURE_SCREEN, FIGURA],
  [FORM_WORDS, FORMA],
  [GRID_WORDS, CUADRICULA],
  [HABITS_SCREEN, COSTUMBRES],
  [SHAPE_WORDS, MANO],
  [JOURNAL_WORDS, DIARIO],
  [LANGUAGE_SCREEN, IDIOMA],
  [LIBRARY_WORDS, ESTANTE],
  [NOTICES, NOTICIAS],
  [OWN_FIGURE_SCREEN, FIGURA_PROPIA],
  [PAGE_NOTICES, AVISOS],
  [SETTINGS_SCREEN, AJUSTES],
  [PAD_WORDS, RITMO_PROPIO],
  [WHY_WORDS, PORQUES],
  [ALIGNMENT_WORDS, DIRECCIONES],
  [FAULT_WORDS, FALTAS],
  [FINDINGS, HALLAZGOS],
  [LISTENING, ACOMPANAR],
  [DRILLS, EJERCICIOS],
];
