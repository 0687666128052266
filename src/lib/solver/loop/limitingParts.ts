/** Each part of a loop with more of its own capacity: what {@link limiting} tries one after another. */
import { sourceVolts } from '../feed/circuit';
import { AIR_SIDE_RANGE } from '../airside/checks';
import { COMPRESSOR_RANGE } from '../charge/compressor';
import { speedRatio } from '../hydraulics/pump';
import { squeezed } from '../diagnosis/changes';
import { scaledCore } from './frontWhatIf';
import { prepareLoop, type PreparedLoop } from './prepare';
import type { DutyId, HoseId, Loop, RatedLoss } from './types';

/** Parts that may hold a loop back, in order of flow, then air, then heat. */
export const LIMITING_PARTS = [
  'front',
  'fans',
  'shroud',
  'opening',
  'pump',
  'feed',
  'hoses',
  'passages',
  'cooler',
  'tank',
  'charge',
  'soak',
] as const;
export type LimitingPart = (typeof LIMITING_PARTS)[number];

/** Not a part of the loop but what is put into it: said beside the parts, never called the limit. */
export const LOADS: readonly LimitingPart[] = ['charge'];

/** What the loop does not say of itself. */
export interface FeedFacts {
  /** On the pump's plug now, V. */
  readonly volts: number;
  /** At the battery posts, V: no feed can bring more. */
  readonly source: number;
}

/** Volts on the plug and at the posts; `source` (V) counts where the loop states the volts outright. */
export const feedFacts = ({ loop, hydraulics }: PreparedLoop, source: number): FeedFacts => ({
  volts: hydraulics.pump.volts,
  source: loop.feed ? sourceVolts(loop.feed.circuit.source) : source,
});

/** A quarter more flow at the same loss: the same loss at that much more flow. */
const wider = (loss: RatedLoss, factor: number): RatedLoss => ({
  ...loss,
  points: loss.points.map((point) => ({ ...point, flow: point.flow * factor })),
});

/**
 * A hose that passes `factor` times the flow at the same loss: friction goes with Q²/D⁵ where it is
 * turbulent, so the bore grows by the 2/5 power.
 */
const BORE_POWER = 0.4;

const within = (value: number, [low, high]: readonly [number, number]) =>
  Math.min(high, Math.max(low, value));

/**
 * The loop with `factor` times the capacity of one part, everything else as it is:
 *
 * | part | what grows |
 * |---|---|
 * | front, cooler | conductance UA of the core |
 * | fans | flow of the fans at every pressure |
 * | shroud | share of the face behind it, and the hot air coming round falls |
 * | opening | share of the stagnation pressure left across the stack |
 * | pump | flow of the pump at every head |
 * | feed | volts on the plug, never above the source; all of the source where the pump stands still |
 * | hoses, passages | flow at the same loss, of the hoses and of both cores |
 * | tank | liquid held |
 * | charge | compressor efficiency, hence less heat in the charge air |
 * | soak | insulation: the engine's and the bay's conductances fall |
 *
 * Shares stop at their ends. Null where the part has nothing left to give.
 */
export function withMore(
  ready: PreparedLoop,
  part: LimitingPart,
  factor: number,
  feed: FeedFacts,
): PreparedLoop | null {
  if (part === 'front') return { ...ready, frontCore: scaledCore(ready.frontCore, factor) };
  if (part === 'cooler') return { ...ready, chargeCore: scaledCore(ready.chargeCore, factor) };
  const loop = loopWithMore(ready.loop, part, factor, feed);
  if (!loop) return null;
  const { chargeCore, frontCore } = ready;
  // The cores may themselves be grown ones, which no description of a loop can say.
  return { ...prepareLoop(loop), chargeCore, frontCore };
}

function loopWithMore(
  loop: Loop,
  part: Exclude<LimitingPart, 'front' | 'cooler'>,
  factor: number,
  feed: FeedFacts,
): Loop | null {
  const { frontExchanger, chargeCooler, fans, airPath, pump, reservoir, soak } = loop;
  switch (part) {
    case 'fans':
      if (fans.count === 0 || fans.volts === 0) return null;
      return {
        ...loop,
        fans: { ...fans, curve: fans.curve.map((p) => ({ ...p, flow: p.flow * factor })) },
      };
    case 'shroud': {
      const coverage = within(fans.coverage * factor, AIR_SIDE_RANGE.coverage);
      const recirculation = airPath.recirculation / factor;
      if (coverage === fans.coverage && recirculation === airPath.recirculation) return null;
      return { ...loop, fans: { ...fans, coverage }, airPath: { ...airPath, recirculation } };
    }
    case 'opening': {
      const ramRecovery = within(airPath.ramRecovery * factor, AIR_SIDE_RANGE.ramRecovery);
      if (ramRecovery === airPath.ramRecovery) return null;
      return { ...loop, airPath: { ...airPath, ramRecovery } };
    }
    case 'pump':
      return {
        ...loop,
        pump: { ...pump, curve: pump.curve.map((p) => ({ ...p, flow: p.flow * factor })) },
      };
    case 'feed': {
      const stands = !(speedRatio({ ...pump, volts: feed.volts }) > 0);
      const volts = stands ? feed.source : Math.min(feed.source, feed.volts * factor);
      if (!(volts > feed.volts)) return null;
      return { ...loop, feed: null, pump: { ...pump, volts } };
    }
    case 'hoses': {
      const runs = Object.keys(loop.hoses) as HoseId[];
      return runs.reduce((wide, id) => squeezed(wide, id, factor ** BORE_POWER), loop);
    }
    case 'passages':
      return {
        ...loop,
        frontExchanger: {
          ...frontExchanger,
          liquidLoss: wider(frontExchanger.liquidLoss, factor),
        },
        chargeCooler: { ...chargeCooler, liquidLoss: wider(chargeCooler.liquidLoss, factor) },
      };
    case 'tank':
      return {
        ...loop,
        reservoir: {
          ...reservoir,
          liquidVolume: reservoir.liquidVolume * factor,
          totalVolume: reservoir.totalVolume * factor,
        },
      };
    case 'charge':
      return { ...loop, duties: lighter(loop.duties, factor) };
    case 'soak':
      return {
        ...loop,
        soak: {
          ...soak,
          engineConductance: soak.engineConductance / factor,
          hoseConductance: soak.hoseConductance / factor,
          reservoirConductance: soak.reservoirConductance / factor,
        },
      };
  }
}

/** Less heat in the charge air of every duty: by the compressor, or of the heat stated. */
function lighter(duties: Loop['duties'], factor: number): Loop['duties'] {
  const one = (id: DutyId) => {
    const duty = duties[id];
    return duty.air.by === 'heat'
      ? { ...duty, air: { ...duty.air, heat: duty.air.heat / factor } }
      : {
          ...duty,
          compressorEfficiency: within(
            duty.compressorEfficiency * factor,
            COMPRESSOR_RANGE.efficiency,
          ),
        };
  };
  return { traffic: one('traffic'), cruise: one('cruise'), pull: one('pull') };
}
