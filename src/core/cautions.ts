/** Warnings that stand beside every procedure that can hurt someone. Our own words; they defer to law, maker and licence. */
export const CAUTIONS = {
  'road-test':
    'Road test: one person drives and keeps to the speed limit, a second one minds the recorder; dry straight road, sensor fixed so that it cannot fly.',
  'stop-at-once':
    'Stop at once for knocking, a loose wheel, a bulging tire or a shake that keeps growing; do not drive through it.',
  hoist:
    'Use a rated hoist or stands with all locks engaged and the wheels blocked, and lead the exhaust outdoors when the engine runs. Nobody under the vehicle or in line with wheels or shaft while engine or motor drives them; turned by hand, one person turns and is told when to stop.',
  'ride-height':
    'Joint angles count only at ride height: support the vehicle by its axles or wheels. Hanging suspension shows angles the road never sees, and joints run at them are overworked.',
  'one-wheel-free':
    'With one driven wheel held the free one turns at twice the indicated speed, and a four-wheel drive can drive off its stands: all driven wheels free, or do not run it.',
  'turning-parts':
    'Keep hands, hair, sleeves, cables and lamps away from turning parts; key out and everything at a standstill before reaching in.',
  'trial-weight':
    'A trial weight’s force grows with the square of speed. Check its clearance through a full turn by hand, tighten and secure it, start slow, stay out of its plane, and never exceed the shaft’s safe speed.',
  'shaft-out':
    'With the shaft out neither park nor a gear holds the vehicle, nor a parking brake that acts through it: block the wheels first. Mark every mating part, support the shaft’s weight, and use new fasteners where the fit needs them.',
  reassembly:
    'Before running, check ring seating, end play and free movement of each cross by hand, and torque to the maker’s figures.',
  'wheel-off':
    'Support the vehicle on stands before a wheel comes off; tighten the nuts in a star pattern to the maker’s torque and again after a short drive.',
  'tire-off-rim':
    'Let all the air out, valve core removed, before the bead is broken; inflate in a cage or stand clear with a clip-on chuck, never beyond the maker’s pressure for seating beads. Tires are mounted by people trained for it, and licensed where the law asks for it.',
  'locked-drive':
    'A four-wheel drive locked on dry pavement winds up: it steers badly, can break parts, and lets go with force when a wheel is lifted. Unlock it, and roll it to and fro on loose ground, before it is raised.',
  'brake-test': 'Brake tests: empty road, nobody behind, both hands on the wheel, seat belts on.',
  'brake-dust': 'Keep brake dust out of the air: no compressed air.',
  'hot-parts': 'Exhaust, coolant and brake parts burn skin: let them cool.',
  'ignition-voltage':
    'Ignition voltage can stop a heart, above all one with a pacemaker: engine off before touching coils or leads.',
  'hot-catalyst':
    'A misfire sends fuel into the catalytic converter, which can glow: keep tests short, do not pull hard, and do not stop over dry grass.',
  'fuel-system': 'Fuel lines hold pressure: relieve it by the maker’s procedure, away from flame and sparks.',
  'standing-engine':
    'Engine tests standing: out of gear or in park, parking brake set, wheels blocked, doors open to fresh air.',
  'against-the-brake':
    'Engine loaded in gear, standing: wheels blocked, parking brake and foot brake hard on, nobody in front of or behind the vehicle, hands off the engine, a few seconds at most, doors open to fresh air.',
  cranking:
    'Cranking with the plugs out throws fuel vapor beside live coils: ignition and injection disabled first, no flame or spark near.',
  'neutral-coast':
    'Coast in neutral only on an empty straight road, engine running so that brakes and steering keep their help, and where the maker and the law allow it.',
  'belt-off':
    'Without the belt, pump, charging and steering help stop: run the engine under a minute, and do not drive.',
  'high-voltage':
    'Orange cables carry lethal voltage: only people licensed for it may open the drive unit or its wiring.',
  'compressed-springs': 'Springs and loaded links hold energy: leave them to the maker’s procedure and tools.',
  'level-down':
    'A level that went down does not clear a vehicle as safe. Local codes, the maker’s procedure and licensed practice come first.',
} as const;

export type CautionId = keyof typeof CAUTIONS;

/** Sentences of the cautions, in the order given, each once. */
export const cautionTexts = (ids: readonly CautionId[]): string[] => [...new Set(ids)].map((id) => CAUTIONS[id]);
