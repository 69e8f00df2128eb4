import { ALIGNMENT_WORDS } from './alignment-sentence';
import { ASSIGNMENT_WORDS } from './assignment';
import { BANNERS } from './banners';
import { CHANGES } from './changes';
import { CHART_EDITOR } from './chart-editor';
import { CHART_SCREEN } from './chart-screen';
import { DRILLS } from './drills';
import { FAULT_WORDS } from './fault';
import { FIGURE_SCREEN } from './figure-screen';
import { FINDINGS } from './findings';
import { FORM_WORDS } from './form-map';
import { GLOSSARY_WORDS } from './glossary';
import { GRID_WORDS } from './grid';
import { HABITS_SCREEN } from './habits-screen';
import { SHAPE_WORDS } from './hand-shape';
import { IMPORT_WORDS } from './import-screen';
import { JOURNAL_WORDS } from './journal';
import type { Translation } from './language';
import { LANGUAGE_SCREEN } from './language-screen';
import { LIBRARY_WORDS } from './library';
import { LINK_WORDS } from './link';
import { LISTENING } from './listening';
import { MUSIC_TEXTS } from './music-texts';
import { NOTICES } from './notice';
import { OWN_FIGURE_SCREEN } from './own-figure-screen';
import { PAGE_NOTICES } from './page-notices';
import { PENCIL_WORDS } from './pencil-list';
import { PAD_WORDS } from './rhythm-pad';
import { SAFETY_WORDS } from './safety';
import { SCORE_FILE_WORDS } from './score-file';
import { SCREEN } from './screen';
import { SETTINGS_SCREEN } from './settings-screen';
import { SHEET_PHRASES, SHEET_WORDS, STAFF_WORDS } from './sheet';
import { SHEET_OPTION_WORDS } from './sheet-options';
import { TAREAS } from './spanish/assignment';
import { CAMBIOS } from './spanish/changes';
import { CIFRADO, EDITOR } from './spanish/chart';
import { PIEZAS } from './spanish/counting';
import { EJERCICIOS } from './spanish/drills';
import { HALLAZGOS } from './spanish/findings';
import { FORMA } from './spanish/form-map';
import { GLOSARIO } from './spanish/glossary';
import { CUADRICULA } from './spanish/grid';
import { IMPORTAR } from './spanish/import';
import { DIARIO } from './spanish/journal';
import { DIRECCIONES, FALTAS } from './spanish/judgements';
import { ESTANTE } from './spanish/library';
import { ENLACE, VERSION_NUEVA } from './spanish/link';
import { ACOMPANAR } from './spanish/listening';
import { AJUSTES } from './spanish/more-settings';
import { TEXTOS } from './spanish/music-texts';
import { NOTICIAS } from './spanish/notices';
import { LISTA, PARTITURA } from './spanish/pencil';
import { RITMO_PROPIO } from './spanish/rhythm-pad';
import { RESGUARDO } from './spanish/safety';
import { PANTALLA } from './spanish/screen';
import { AVISOS, AVISOS_DE_EJERCICIO, AVISOS_DEL_TRANSPORTE, COSTUMBRES, FIGURA, FIGURA_PROPIA, IDIOMA } from './spanish/settings';
import { MANO } from './spanish/shapes';
import { FRASES_DE_HOJA, HOJA, OPCIONES_DE_HOJA, PENTAGRAMA } from './spanish/sheet';
import { PARA_LLEVAR } from './spanish/take-along';
import { PORQUES } from './spanish/why';
import { SPOKEN } from './spoken';
import { TAKE_ALONG_WORDS } from './take-along';
import { TRANSPORT_NOTICES } from './transport-notices';
import { UPDATE_WORDS } from './update';
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
  [GLOSSARY_WORDS, GLOSARIO],
  [GRID_WORDS, CUADRICULA],
  [HABITS_SCREEN, COSTUMBRES],
  [SHAPE_WORDS, MANO],
  [JOURNAL_WORDS, DIARIO],
  [ASSIGNMENT_WORDS, TAREAS],
  [LANGUAGE_SCREEN, IDIOMA],
  [LIBRARY_WORDS, ESTANTE],
  [MUSIC_TEXTS, TEXTOS],
  [NOTICES, NOTICIAS],
  [OWN_FIGURE_SCREEN, FIGURA_PROPIA],
  [PAGE_NOTICES, AVISOS],
  [TRANSPORT_NOTICES, AVISOS_DEL_TRANSPORTE],
  [SETTINGS_SCREEN, AJUSTES],
  [PAD_WORDS, RITMO_PROPIO],
  [WHY_WORDS, PORQUES],
  [ALIGNMENT_WORDS, DIRECCIONES],
  [FAULT_WORDS, FALTAS],
  [FINDINGS, HALLAZGOS],
  [LISTENING, ACOMPANAR],
  [DRILLS, EJERCICIOS],
  [STAFF_WORDS, PENTAGRAMA],
  [SHEET_PHRASES, FRASES_DE_HOJA],
  [SHEET_WORDS, HOJA],
  [SHEET_OPTION_WORDS, OPCIONES_DE_HOJA],
  [PENCIL_WORDS, LISTA],
  [SCORE_FILE_WORDS, PARTITURA],
  [TAKE_ALONG_WORDS, PARA_LLEVAR],
  [LINK_WORDS, ENLACE],
  [UPDATE_WORDS, VERSION_NUEVA],
  [SAFETY_WORDS, RESGUARDO],
  [IMPORT_WORDS, IMPORTAR],
];
