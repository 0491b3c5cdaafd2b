/** Which data about vehicle and run are missing that would change the answer. */
import { axleRatioOf, engineTurnsPerWheelTurn, hasDriveshaft, positive, teethContradictRatio } from './ratios.ts';
import type { RunCondition, Vehicle } from './vehicle.ts';

export interface MissingDatum {
  /** Key in the job file, 'vehicle.axleRatio' or 'run.speedMps', for the form to point at. */
  readonly key: string;
  /** What to give and what it would bring, one plain sentence. */
  readonly text: string;
  /** True where lines cannot be computed without it; false where it only sharpens or completes the answer. */
  readonly blocks: boolean;
}

const runData = (condition: RunCondition): MissingDatum[] => {
  const data: MissingDatum[] = [];
  const stood = condition.load === 'standing';
  if (positive(condition.speedMps) === null && !stood) {
    const text = 'Give the road speed: without it tire and driveshaft frequencies are not known.';
    data.push({ key: 'run.speedMps', text, blocks: true });
  } else if (!stood && (condition.speedSource === undefined || condition.speedSource === 'dial')) {
    const text =
      'A speed from GPS or the diagnostic socket would narrow every line: a speedometer may read up to a tenth high.';
    data.push({ key: 'run.speedSource', text, blocks: false });
  }
  if (condition.load === undefined) {
    const text = 'Say how the run was driven (cruise, pull, coast, neutral, brake, standing): causes depend on load.';
    data.push({ key: 'run.load', text, blocks: false });
  }
  return data;
};

const roadData = (vehicle: Vehicle): MissingDatum[] => {
  const data: MissingDatum[] = [];
  if (vehicle.tire === undefined) {
    const text = 'Give the tire size: without it the wheel speed, and so tire and driveshaft lines, are not known.';
    data.push({ key: 'vehicle.tire', text, blocks: true });
  }
  if (hasDriveshaft(vehicle) && axleRatioOf(vehicle) === null) {
    const text = 'Give the axle ratio: without it the driveshaft cannot be told from anything else.';
    data.push({ key: 'vehicle.axleRatio', text, blocks: true });
  }
  if (teethContradictRatio(vehicle)) {
    const text = 'Check the tooth counts: they do not give the ratio that was entered.';
    data.push({ key: 'vehicle.ringTeeth', text, blocks: false });
  }
  if (vehicle.layout === 'four-wheel-drive' && positive(vehicle.frontAxleRatio) === null) {
    const text = 'Give the front axle ratio if it differs: with equal ratios the two driveshafts cannot be told apart.';
    data.push({ key: 'vehicle.frontAxleRatio', text, blocks: false });
  }
  return data;
};

const outOfGear = ({ load }: RunCondition): boolean => load === 'neutral' || load === 'standing';

const engineData = (vehicle: Vehicle, condition: RunCondition): MissingDatum[] => {
  const data: MissingDatum[] = [];
  const engineKnown = positive(condition.engineRpm) !== null;
  if (!engineKnown && engineTurnsPerWheelTurn(vehicle, condition) === null) {
    const text =
      vehicle.layout === 'electric'
        ? 'Give the reduction ratio: without it the motor lines are not known.'
        : outOfGear(condition)
          ? 'Give the engine speed, idle or as it was held: out of gear the road does not tell it, and engine lines are not known.'
          : 'Give the engine speed or the gear in use: without it engine lines are not known and cannot be ruled out.';
    const key = vehicle.layout === 'electric' ? 'vehicle.finalDrive' : 'run.engineRpm';
    data.push({ key, text, blocks: true });
  }
  if (vehicle.layout === 'electric') return data;
  if (vehicle.cylinders === undefined) {
    const text = 'Give the number of cylinders: the firing order, a normal line of every engine, depends on it.';
    data.push({ key: 'vehicle.cylinders', text, blocks: false });
  }
  if (!engineKnown && vehicle.converter === undefined && positive(condition.gearRatio) !== null) {
    const text =
      'Say whether there is a torque converter: one that is not locked lets the engine turn up to 3 % faster.';
    data.push({ key: 'vehicle.converter', text, blocks: false });
  }
  return data;
};

/**
 * What would change the answer if it were known, most important first.
 *
 * @returns Empty where nothing is missing. Texts are whole sentences for form and report.
 */
export const missingData = (vehicle: Vehicle, condition: RunCondition): readonly MissingDatum[] => {
  // Standing, no wheel and no shaft turns.
  const road = condition.load === 'standing' ? [] : roadData(vehicle);
  const all = [...runData(condition), ...road, ...engineData(vehicle, condition)];
  return [...all.filter((datum) => datum.blocks), ...all.filter((datum) => !datum.blocks)];
};
