/**
 * The words of column names, in English, German, French and Spanish: the one table to extend for another logger or
 * language. Words are written as {@link normalised} leaves them: lower case, no accents, µ as u.
 */

/** What a column can hold, as its name says it. */
export type Quantity =
  | 'time'
  | 'counter'
  | 'acceleration'
  | 'linear-acceleration'
  | 'gravity'
  | 'magnitude'
  | 'gyroscope'
  | 'magnetometer'
  | 'orientation'
  | 'location'
  | 'road-speed'
  | 'wheel-speed'
  | 'engine-speed'
  | 'other';

/**
 * Tried from top to bottom on the name's words; the first hit decides. `all` words must be there, of `any` one.
 * A word ending in * stands for all words that begin so.
 */
export interface WordRule {
  readonly quantity: Quantity;
  readonly any: readonly string[];
  readonly all?: readonly string[];
  readonly not?: readonly string[];
}

const words = (list: string): readonly string[] => list.split(' ');

const ACCELERATION = words('acc accel accelero* accelera* acelera* acelero* beschl* accl gforce gf accs');
const SPEED = words(
  'speed* velocity velocities geschw* fahrgeschw* fahrzeuggeschw* tempo fahrtempo tacho* vitesse* velocidad* v rapidez',
);
/** What an accelerometer shows, acceleration only where the unit is one: vibration is told in mm/s and µm as well. */
export const SHAKING = words('vib vibration* vibracion* schwing* schwingung* shock* stoss* choc* shake*');
export const WHEEL = words('wheel* rad raeder rader radgeschw* raddreh* roue* rueda* tire tyre');
const ENGINE = words('engine* motor* moteur* crank* kurbel* vilebrequin ciguenal');
const TURNING = words(
  'rpm rev revs revolution* drehzahl motordrehzahl regime regimen revoluciones tours touren umin trmin',
);

/** Things that turn and are neither wheel nor engine. */
export const OTHER_SHAFTS = words(
  'shaft* driveshaft* halfshaft* antrieb* turbine* input output welle* gelenkwelle* kardan* arbre* arbol* prop* cardan* fan lufter* vent* pump* generator* lichtmaschine* alternator getriebe* transmission',
);

export const WORD_RULES: readonly WordRule[] = [
  {
    quantity: 'other',
    any: words(
      'accuracy precision genauigkeit exactitude exactitud error sd std quality qualitat status temp temper* press* pression presion druck luftdruck baro* batt* humid* light lux sound noise db volt* spannung tension strom current throttle gas drossel* pedal* brake bremse frein freno gear gang steps proximity',
    ),
  },
  {
    quantity: 'gyroscope',
    any: words(
      'gyro* gyr giro* kreisel drehrate* winkelgeschw* angular angulaire rotation* rotacion omega wx wy wz turnrate',
    ),
  },
  {
    quantity: 'magnetometer',
    any: words('mag magn magnet* compass kompass boussole brujula bx by bz mx my mz'),
  },
  {
    quantity: 'orientation',
    any: words(
      'roll pitch yaw azimuth* azimut quat* euler orient* attitude* heading tilt neigung* lage qx qy qz qw cap rumbo inclin* nick gier',
    ),
  },
  { quantity: 'linear-acceleration', any: ACCELERATION, all: ['linear*'] },
  { quantity: 'linear-acceleration', any: ACCELERATION, all: ['user*'] },
  { quantity: 'linear-acceleration', any: ACCELERATION, all: ['without'] },
  { quantity: 'linear-acceleration', any: ACCELERATION, all: ['ohne'] },
  { quantity: 'linear-acceleration', any: ACCELERATION, all: ['sans'] },
  { quantity: 'linear-acceleration', any: ACCELERATION, all: ['sin'] },
  { quantity: 'linear-acceleration', any: ACCELERATION, all: ['lineal'] },
  { quantity: 'linear-acceleration', any: ACCELERATION, all: ['lineaire'] },
  {
    quantity: 'gravity',
    any: words('gravity gravit* gravedad gravitation* schwerkraft pesanteur grav'),
    not: [...ACCELERATION, 'with', 'including'],
  },
  {
    quantity: 'magnitude',
    any: words(
      'abs absolute absolut absolu absolue absoluto absoluta absolutbetrag magnitude magnitud total totale norm norme norma result* betrag gesamt gesamtbeschl* module modulo vectorsum sum summe somme suma mag rms',
    ),
  },
  { quantity: 'acceleration', any: ACCELERATION },
  { quantity: 'wheel-speed', any: WHEEL, not: [...ENGINE, 'rads', 'deg'] },
  { quantity: 'engine-speed', any: TURNING, not: OTHER_SHAFTS },
  { quantity: 'engine-speed', any: ENGINE, all: ['speed*'] },
  { quantity: 'engine-speed', any: ENGINE, all: ['hz'] },
  {
    quantity: 'road-speed',
    any: SPEED,
    not: words('fan wind lufter vent* viento shaft turbine input output'),
  },
  {
    quantity: 'location',
    any: words(
      'lat latitude latitud breite breitengrad lon lng long longitude longitud lange langengrad laengengrad alt altitude altitud hohe hoehe elevation hauteur altura bearing course kurs distance distanz distancia satellit* location* gps gnss position* standort ubicacion',
    ),
  },
  {
    quantity: 'counter',
    any: words(
      'index idx sample samples sampleno count counter row nr no num number record zahler zaehler numero echantillon muestra zeile seq sequence packet id n',
    ),
    not: words('time* zeit temps tiempo'),
  },
  {
    quantity: 'time',
    any: words(
      'time* t zeit* uhrzeit temps tiempo tempo tijd hora heure horodat* stamp timestamp zeitstempel elapsed epoch* unix utc date datum fecha datetime clock seconds second sekunde* seconde* segundo* sec s ms millis msec us micros usec ns nanos nsec millisec* microsec* nanosec* millisek* mikrosek* nanosek* miliseg* microseg* nanoseg* duree dauer marca instant relativ*',
    ),
  },
];

/** Words that name an axis; directions follow ISO 8855: x forward, y to the side, z up. */
export const AXIS_WORDS: Readonly<Record<'x' | 'y' | 'z', readonly string[]>> = {
  x: words('x longitudinal* langs laengs langsbeschl* fore forward'),
  y: words('y lateral* quer* transvers* seit* side sideways'),
  z: words('z vertic* vertikal* hoch* up upward'),
};

/** Names without a meaning of their own: 'ch1', 'value', 'column 3'. Such columns may be judged by their numbers. */
export const NEUTRAL_WORDS: readonly string[] = words(
  'ch chan channel kanal canal voie col column spalte colonne columna val value values wert werte valeur valor data daten donnee* dato* signal sensor axis achse axe eje field feld champ campo unnamed v y raw in input ai adc',
);

/** Names of a sensor in a file name, a remark above the table or a sensor column. */
export const SENSOR_WORDS: readonly { readonly quantity: Quantity; readonly words: readonly string[] }[] = [
  { quantity: 'gyroscope', words: words('gyro* gyr giro* kreisel* drehrate* winkelgeschw*') },
  {
    quantity: 'magnetometer',
    words: words('magnetom* magnetfeld magnetic magnetique magnetico mag compass kompass'),
  },
  { quantity: 'orientation', words: words('orientation orientierung attitude orientacion') },
  { quantity: 'gravity', words: words('gravity schwerkraft gravedad gravite') },
  { quantity: 'location', words: words('location gps gnss standort ubicacion') },
  { quantity: 'other', words: words('barometer pressure light microphone') },
];

/** Lines above the table that state the rate or the interval between samples. */
export const RATE_WORDS: readonly string[] = words(
  'sampl* rate fs abtast* echantillon* muestreo messrate frequenz odr frequency frequence frecuencia datarate hz cadence',
);
export const INTERVAL_WORDS: readonly string[] = words(
  'interval* intervall* intervalo period periode periodo dt schritt* step pas paso delta increment abtastzeit',
);

export const UNIT_WORDS: readonly string[] = words('unit units einheit einheiten unite unites unidad unidades');

/** Does one of the words match the pattern, in which a closing * stands for any ending? */
const matches = (words: readonly string[], pattern: string): boolean =>
  pattern.endsWith('*') ? words.some((w) => w.startsWith(pattern.slice(0, -1))) : words.includes(pattern);

export const matchesAny = (words: readonly string[], patterns: readonly string[]): boolean =>
  patterns.some((pattern) => matches(words, pattern));

/** Lower case, no accents, µ as u, ² as 2. */
export const normalised = (text: string): string =>
  text
    .replace(/ß/g, 'ss')
    .normalize('NFKD')
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/[μµ]/g, 'u')
    .replace(/°/g, 'deg')
    .toLowerCase();

/** The words of a name: split at marks, at case changes and between letters and digits. */
export function wordsOf(name: string): string[] {
  const spaced = name
    .replace(/\bgF(?=[xyz]\b)/gi, 'gforce ')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .replace(/([A-Z])([A-Z][a-z])/g, '$1 $2')
    .replace(/([A-Za-z])(\d)/g, '$1 $2')
    .replace(/(\d)([A-Za-z])/g, '$1 $2');
  return normalised(spaced)
    .split(/[^a-z0-9]+/)
    .filter((word) => word !== '');
}
