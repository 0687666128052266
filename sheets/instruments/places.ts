/**
 * Where instruments go on a loop of this kind, in the default order of the trade: what tells most for
 * the least work first. Order, minutes, reasons and mounting: common practice, no source.
 */
import type { DutyChannel } from '$lib/solver/diagnosis/types';

export type PlaceId =
  | 'reservoir'
  | 'volts'
  | 'amps'
  | 'frontIn'
  | 'frontOut'
  | 'flow'
  | 'faceAir'
  | 'ambient'
  | 'chargeAfter'
  | 'chargeBefore'
  | 'coolerIn'
  | 'coolerOut'
  | 'pumpOutlet'
  | 'pumpInlet'
  | 'barometer';

export interface Place {
  readonly id: PlaceId;
  readonly name: string;
  /** The reading of the diagnosis that it gives. */
  readonly channel?: DutyChannel;
  readonly why: string;
  readonly mount: string;
  /** What the reading is taken with. */
  readonly kind: 'probe' | 'meter' | 'gauge';
}

const TEE = 'Tip a third into the bore, facing the flow, in a tee that points up so no air stays';

export const PLACES: readonly Place[] = [
  {
    id: 'reservoir',
    name: 'Reservoir',
    channel: 'reservoir',
    kind: 'probe',
    why: 'Tank against intake tells at once whether the liquid moves at all.',
    mount: 'Tip in the stream near the outlet, below the lowest level, not in a dead corner.',
  },
  {
    id: 'volts',
    name: 'Volts at the pump’s plug',
    channel: 'volts',
    kind: 'meter',
    why: 'The battery’s volts say nothing of what the pump gets when its feed is hot.',
    mount: 'Both pins of the plug, tap fused at the plug, strain relief, clear of the fans.',
  },
  {
    id: 'amps',
    name: 'Amps of the pump',
    channel: 'amps',
    kind: 'meter',
    why: 'Amps tell liquid from air: a pump without its prime draws little, a rubbing one too much.',
    mount: 'Clamp or shunt behind the fuse, all pumps together; zero the clamp where it will sit.',
  },
  {
    id: 'frontIn',
    name: 'Liquid into the front exchanger',
    channel: 'frontIn',
    kind: 'probe',
    why: 'With the outlet it gives the drop: much drop is little flow, little drop is little air.',
    mount: `${TEE}, away from the swirl behind pump and bends.`,
  },
  {
    id: 'frontOut',
    name: 'Liquid out of the front exchanger',
    channel: 'frontOut',
    kind: 'probe',
    why: 'The other half of the drop; only the difference counts, so these two are a pair.',
    mount: `${TEE}; a probe of the same lot as the inlet’s, both out of one bath.`,
  },
  {
    id: 'flow',
    name: 'Flow meter',
    channel: 'flow',
    kind: 'meter',
    why: 'Flow times drop is heat; without it a hot tank has two causes that look alike.',
    mount:
      'Return run, flow going up, ten bores straight before and five after; never on the suction.',
  },
  {
    id: 'faceAir',
    name: 'Air at the core’s face',
    channel: 'faceAir',
    kind: 'probe',
    why: 'What the core breathes is not the weather: condenser, gaps and hot air coming round.',
    mount:
      'Thin probe a finger ahead of the fins, shaded from the core’s own heat, several places.',
  },
  {
    id: 'ambient',
    name: 'Ambient air',
    kind: 'probe',
    why: 'Every approach is counted from it, in the same minute as the rest.',
    mount: 'Shaded, in moving air ahead of the bumper, away from exhaust and hot ground.',
  },
  {
    id: 'chargeAfter',
    name: 'Charge air after its cooler',
    channel: 'charge',
    kind: 'probe',
    why: 'At cruise it reads the liquid in the core; in a pull it is what the engine gets.',
    mount: 'The engine’s own, read from its data; an added one bare and fast, mid-duct.',
  },
  {
    id: 'chargeBefore',
    name: 'Charge air before its cooler',
    kind: 'probe',
    why: 'Both charge temperatures give the heat a second time, by the air.',
    mount: 'Bare tip rated for the discharge, threaded fitting: boost pushes a plain one out.',
  },
  {
    id: 'coolerIn',
    name: 'Liquid into the charge cooler',
    kind: 'probe',
    why: 'What the cooler is fed with; against the place before it, the heat picked up on the way.',
    mount: `${TEE}, away from the swirl behind pump and bends.`,
  },
  {
    id: 'coolerOut',
    name: 'Liquid out of the charge cooler',
    kind: 'probe',
    why: 'Its rise follows every pull; steady, it closes the account of the heat.',
    mount: `${TEE}; the highest point of the loop is the wrong place.`,
  },
  {
    id: 'pumpOutlet',
    name: 'Pressure at the pump’s outlet',
    channel: 'pumpRise',
    kind: 'gauge',
    why: 'Little flow at high pressure is a blockage, at low pressure air or a starved pump.',
    mount: 'Port on the side of the hose, neither top (air) nor bottom (dirt), rated for the cap.',
  },
  {
    id: 'pumpInlet',
    name: 'Pressure at the pump’s inlet',
    kind: 'gauge',
    why: 'It measures the suction margin that is otherwise only worked out.',
    mount: 'Side port, a gauge that reads below the air’s pressure; a leak here draws air in.',
  },
  {
    id: 'barometer',
    name: 'Barometer',
    kind: 'gauge',
    why: 'It sets the boil point; a weather report is for sea level, not for the shop.',
    mount: 'In the shop, read as it stands there.',
  },
];
