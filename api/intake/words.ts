import type { Measured } from '../domain/composition/types.ts';
import { MAX_HEADING_CHARACTERS } from './limits.ts';
import { plainWords } from './text.ts';
import type { ColumnRole, SpecimenKind } from './types.ts';

/**
 * Headings that laboratories and excavations use, in English, German, French, Italian, Spanish and Greek, without
 * accents. Common practice, no published source. Within one role, the earlier word wins over the later.
 */
const HEADINGS: Readonly<Partial<Record<ColumnRole, string>>> = {
  specimen:
    'specimen|specimen id|specimen no|sherd|sherd no|sherd id|sherd number|sample|sample id|sample no|sample nr|sample number|' +
    'sample name|sample code|sample label|tile|tile no|tile id|replica|probe|proben nr|probennummer|probe nr|scherbe|scherben nr|' +
    'echantillon|ech|tesson|n echantillon|no echantillon|campione|n campione|coccio|sigla|muestra|n muestra|fragmento|' +
    'δειγμα|οστρακο|αρ δειγματος|κωδικος|id|label|name|code|object|find no|inv no|inventory no|inventory number|inventar nr|' +
    'inv nr|cat no|catalogue no|catalog no|catalogue number|katalog nr|bezeichnung|no|nr|n°|n|#|number|nummer|numero|αρ|αριθμος',
  spot:
    'spot|spot no|spot id|spectrum|spectrum label|spectrum no|point|point no|area|spot label|analysis no|analysis number|' +
    'analysis id|analysis|measurement|measurement no|reading|reading no|replicate|rep|run|shot|meas|messpunkt|messung|messstelle|' +
    'spektrum|punkt|spectre|mesure|punto|spettro|misura|espectro|medida|σημειο|φασμα|μετρηση',
  kind: 'kind|specimen kind|sample kind|specimen type|sample type|object type|probenart|art',
  measured:
    'measured|what was measured|measured part|measured on|layer|zone|part|surface|phase|target|schicht|bereich|couche|strato|' +
    'capa|parte|partie|στρωμα',
  group:
    'ware group|ware|group|fabric|fabric group|chemical group|compositional group|reference group|class|cluster|type|kiln|' +
    'production|gruppe|ware gruppe|warenart|warengruppe|fabrikat|groupe|classe|gruppo|grupo|clase|tipo|ομαδα|site|locality|findspot|fundort',
  technique:
    'technique|method|analytical method|analytical technique|analysis method|methode|verfahren|messmethode|tecnica|metodo|τεχνικη|μεθοδος',
  laboratory: 'laboratory|lab|laboratory name|labor|laboratoire|laboratorio|εργαστηριο',
  date: 'date|analysis date|date of analysis|date analysed|date analyzed|measured date|datum|messdatum|fecha|ημερομηνια',
  source:
    'source|reference|ref|citation|publication|published in|bibliography|literature|literatur|quelle|reference bibliographique|' +
    'fonte|riferimento|fuente|referencia|βιβλιογραφια|πηγη',
  doi: 'doi',
  note:
    'note|notes|comment|comments|remark|remarks|description|bemerkung|bemerkungen|kommentar|beschreibung|remarque|remarques|' +
    'commentaire|nota|osservazioni|observaciones|σημειωσεις|παρατηρησεις',
  analyteName:
    'analyte|element|oxide|component|compound|species|constituent|parameter|variable|oxid|verbindung|oxyde|elemento|' +
    'ossido|oxido|compuesto|στοιχειο|οξειδιο',
  value:
    'value|result|concentration|conc|content|amount|reported value|wert|messwert|gehalt|konzentration|valeur|teneur|valore|' +
    'concentrazione|valor|contenido|concentracion|τιμη|συγκεντρωση|περιεκτικοτητα',
  unit: 'unit|units|uom|einheit|einheiten|unite|unites|unita|unita di misura|unidad|unidades|μοναδα|μοναδες',
};

interface Heading {
  readonly role: ColumnRole;
  readonly rank: number;
}
const BY_WORD = new Map<string, Heading>();
for (const [role, words] of Object.entries(HEADINGS))
  words.split('|').forEach((word, rank) => {
    if (!BY_WORD.has(word)) BY_WORD.set(word, { role: role as ColumnRole, rank });
  });

/** What a heading that is no analyte stands for; null when it is none of the usual ones. */
export function headingOf(header: string): Heading | null {
  if (header.length > MAX_HEADING_CHARACTERS) return null;
  const words = plainWords(header);
  if (words === '' && header.trim() === '#') return BY_WORD.get('#') ?? null;
  return BY_WORD.get(words) ?? null;
}

const set = (words: string) => new Set(words.split('|'));
const MEASURED_WORDS: Readonly<Record<Measured, ReadonlySet<string>>> = {
  paint: set(
    'paint|painted|painting|decoration|pigment|glaze|lead glaze|black paint|malerei|bemalung|farbe|glasur|peinture|decor|' +
      'glacure|pittura|decorazione|vetrina|pintura|decoracion|vedrio|χρωμα|διακοσμηση|εφυαλωμα',
  ),
  slip: set(
    'slip|engobe|engobbio|ingobbio|ingobbiatura|white slip|schlicker|uberzug|barbotina|engalba|επιχρισμα',
  ),
  body: set(
    'body|ceramic body|clay body|paste|fabric|clay|matrix|core|scherben|grundmasse|ton|pate|argile|impasto|corpo ceramico|argilla|' +
      'pasta|arcilla|cuerpo|πηλος|σωμα|κεραμικο σωμα',
  ),
  whole: set('whole|bulk|whole sherd|whole vessel|total|gesamt|ensemble|intero|totale|entero|ολοκληρο'),
};
const KIND_WORDS: Readonly<Record<SpecimenKind, ReadonlySet<string>>> = {
  sherd: set('sherd|ancient|original|archaeological|reference|scherbe|tesson|coccio|fragmento|οστρακο'),
  replica: set(
    'replica|tile|test tile|trial|experimental|copy|replik|probekachel|replique|copie|copia|αντιγραφο',
  ),
  material: set('material|raw material|clay|ore|mineral|rohstoff|matiere premiere|materia prima|πρωτη υλη'),
};

export const measuredOf = (text: string): Measured | null => lookUp(MEASURED_WORDS, text);
export const kindOf = (text: string): SpecimenKind | null => lookUp(KIND_WORDS, text);

function lookUp<K extends string>(words: Readonly<Record<K, ReadonlySet<string>>>, text: string): K | null {
  if (text.length > MAX_HEADING_CHARACTERS) return null;
  const plain = plainWords(text);
  return (Object.keys(words) as K[]).find((key) => words[key].has(plain)) ?? null;
}

/** Names of rows that are no analyses. */
const LIMIT_ROW =
  /^(?:(?:lower |mean |average )?(?:detection limits?|limits? of detection|limits? of quantification|quantification limits?)|[lm]?l?[lm]?lod|l?dl|mdl|lld|loq|nachweisgrenzen?|nwg|bestimmungsgrenze|limites? de detection|limite di rivelabilita|limites? de deteccion|οριο ανιχνευσης)(?: (?:ppm|wt|%|wt%|mg kg))*$/;
const SUMMARY_ROW =
  /^(?:(?:group |overall |grand )?(?:mean|average|avg|median|min|max|minimum|maximum|range|sum|count|total|n)|(?:rel(?:ative)? )?(?:s ?d|std|st ?dev|stdev|std dev|standard deviation|standard error|r ?s ?d|c ?v|variance)(?: %)?|mean ?(?:±|and) ?s ?d|mittelwert|mittel|standardabweichung|stabw|summe|moyenne|ecart type|media|deviazione standard|desviacion estandar|promedio|μεσος ορος|τυπικη αποκλιση)$/;
const UNCERTAINTY_ROW =
  /^(?:±|\+\/-|\+-|[12]\s?(?:σ|s|sigma)|±\s?[12]?\s?(?:σ|s|sigma|sd)?|err(?:or)?\.?|uncertainty|fehler|unsicherheit|erreur|incertitude)$/i;

/** What stands behind a specimen's name where the row holds its uncertainties: `S1 ±`, `S1 err`, `S1 (1σ)`. */
const OF_SPECIMEN =
  /^(.*?\S)[\s_-]*[([]?(?:[\s_([](?:err(?:or)?\.?|unc(?:ertainty)?\.?|[12]?\s?(?:sd|s\.d\.|sigma)|[12]\s?s|st\.?\s?dev\.?|std)|±(?:\s?[12]?\s?(?:σ|s|sd))?|\+\/-|[12]?\s?σ)[)\]]?$/i;

/** The specimen whose uncertainties a row is named for; null where it is named for none. */
export function uncertaintiesOf(label: string): string | null {
  if (label.length > 120) return null;
  return OF_SPECIMEN.exec(label.normalize('NFKC').trim())?.[1]?.trim() ?? null;
}

export type RowName = 'limit' | 'summary' | 'uncertainty' | null;

/** What the name of a row says of it; null for an analysis. */
export function rowNameOf(label: string): RowName {
  if (label.length > 60) return null;
  const trimmed = label.normalize('NFKC').trim();
  if (UNCERTAINTY_ROW.test(trimmed)) return 'uncertainty';
  const words = plainWords(trimmed);
  if (LIMIT_ROW.test(words)) return 'limit';
  return SUMMARY_ROW.test(words) ? 'summary' : null;
}
