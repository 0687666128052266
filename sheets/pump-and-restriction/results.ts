/** Results of the liquid side in the duty shown. */
import type { Side } from '$lib/job/evaluate';
import { hydraulicPower } from '$lib/solver/hydraulics/affinity';
import { passRise } from '$lib/solver/hydraulics/formulas';
import type { HydraulicModel } from '$lib/solver/hydraulics/operatingPoint';
import { HOSE_VELOCITY_MAX } from '$lib/solver/hydraulics/runParts';
import { headOfRuns, runShares } from '$lib/solver/hydraulics/shares';
import { pumpChoices } from '$lib/solver/hydraulics/whatIf';
import { stateAbove } from '$lib/solver/loop/limits';
import type { SteadySolution } from '$lib/solver/loop/types';
import type { Result } from '../types';
import { PART_WORDS } from './parts';

export function results({ loop }: Side, model: HydraulicModel, s: SteadySolution): Result[] {
  const { flow, head, npshAvailable } = s.operating;
  const moving = s.status !== 'no-flow';
  const absent = 'nothing flows';
  const rho = s.liquid.density;
  return [
    {
      id: 'flow',
      name: 'Liquid flow',
      symbol: 'Q',
      value: flow,
      quantity: 'volumeFlow',
      better: 'higher',
    },
    {
      id: 'head',
      name: 'Head of the pump at that flow',
      symbol: 'H',
      value: moving ? head : null,
      absent,
      quantity: 'head',
    },
    {
      id: 'free-flow',
      name: 'Flow of the pump with nothing connected',
      symbol: 'Q_0',
      value: model.pump.runOut,
      quantity: 'volumeFlow',
    },
    {
      id: 'shut-off-head',
      name: 'Head of the pump without flow',
      symbol: 'H_0',
      value: model.pump.shutOff,
      quantity: 'head',
    },
    {
      id: 'speed-ratio',
      name: 'Pump speed over its rated speed',
      symbol: 's',
      value: s.operating.speedRatio,
      quantity: 'percent',
    },
    ...runShares(s.operating).map((run): Result => ({
      id: `velocity-${run.part}`,
      name: `Velocity in ${PART_WORDS[run.part]}`,
      symbol: 'V',
      value: run.velocity,
      quantity: 'velocity',
      better: 'lower',
      state: run.velocity! > HOSE_VELOCITY_MAX[run.part] ? 'over' : 'ok',
    })),
    {
      id: 'hose-head',
      name: 'Head lost in all hoses',
      symbol: 'h_h',
      value: moving ? headOfRuns(s.operating) : null,
      absent,
      quantity: 'head',
      better: 'lower',
    },
    {
      id: 'pass-rise',
      name: 'Rise of the liquid in the charge cooler',
      symbol: '\\Delta T_l',
      value: moving ? riseOf(s) : null,
      absent,
      quantity: 'temperatureDifference',
    },
    {
      id: 'npsh-available',
      name: 'Suction head available',
      symbol: '\\mathrm{NPSH_A}',
      value: npshAvailable,
      quantity: 'head',
      better: 'higher',
    },
    {
      id: 'suction-margin',
      name: 'Suction head to spare',
      symbol: 'm_s',
      value: moving ? s.margins.suction : null,
      absent,
      quantity: 'head',
      better: 'higher',
      ...(moving && { state: stateAbove(s.margins.suction, 0, 'head') }),
    },
    {
      id: 'hydraulic-power',
      name: 'Power that moves the liquid',
      symbol: 'P_h',
      value: moving ? hydraulicPower({ rho, Q: flow, H: head }) : null,
      absent,
      quantity: 'electricPower',
    },
    {
      id: 'electrical-input',
      name: 'Electrical input of the pump',
      symbol: 'P',
      value: model.pump.electricPower,
      quantity: 'electricPower',
      better: 'lower',
    },
    ...pumpChoices(loop, { rho, mu: s.liquid.viscosity })
      .slice(1)
      .map(({ arrangement, gain }): Result => ({
        id: `gain-${arrangement}`,
        name: `Flow gained by ${GAINED[arrangement]} over one`,
        symbol: '\\Delta',
        value: gain,
        absent,
        quantity: 'percent',
      })),
  ];
}

const riseOf = ({ liquid, operating, ledger }: SteadySolution): number =>
  passRise.value({
    Q_c: ledger.charge,
    Q_e: ledger.engineSoak,
    rho: liquid.density,
    Q: operating.flow,
    c_p: liquid.specificHeat,
  });

const GAINED = {
  one: 'one pump',
  'two-in-series': 'two in series',
  'two-in-parallel': 'two in parallel',
} as const;
