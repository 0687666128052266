/** A loop whose liquid stands still: every part sits at its own temperature. */
import type { Note } from '../errors';
import { relativeResidual } from './balance';
import { chargeExchange } from './chargeSide';
import { frontExchange, frontState } from './front';
import { isFrontFirst } from './order';
import type { PreparedLoop } from './prepare';
import { coolerState, liquidState, margins, stackNotes } from './solution';
import { standingConductances } from './standing';
import type { AirSide, Duty, HeatLedger, LoopTemperatures, SteadySolution } from './types';

/**
 * Steady state without circulation. The charge cooler's liquid comes to rest between the charge air and
 * the engine that warms it; the reservoir at bay temperature where the bay reaches it, else at ambient;
 * the front exchanger at the air that meets it. Heat stated outright has nowhere to go but the engine
 * side: where that is not enough below the boiling point, the boiling point is shown and the rest of
 * the heat is the residual.
 */
export function standing(prepared: PreparedLoop, duty: Duty, air: AirSide): SteadySolution {
  const { loop, hottest, coldest, boilingPoint } = prepared;
  const { site, soak } = loop;
  const bay = site.ambientTemperature + duty.bayRise;
  const reservoir = soak.reservoirConductance > 0 ? bay : site.ambientTemperature;
  const liquid = prepared.liquidAt(reservoir);
  const operating = prepared.hydraulics.operatingPoint(
    liquid,
    Math.min(Math.max(reservoir, coldest), hottest),
  );
  const charge = chargeExchange(prepared, duty, 0, reservoir, liquid);
  const front = frontExchange(prepared, air, 0, liquid);

  const { toAir } = standingConductances(prepared, charge, front);
  const G_engine = soak.engineConductance;
  const input =
    (charge.statedHeat ?? toAir.charge * charge.airIn) + G_engine * soak.engineTemperature;
  const loss = (charge.statedHeat === null ? toAir.charge : 0) + G_engine;
  // With nothing to hold it the liquid keeps the reservoir's temperature unless heat is poured in.
  const alone = charge.statedHeat ? boilingPoint : reservoir;
  const chargeLiquid = Math.min(loss > 0 ? input / loss : alone, boilingPoint);

  const heat = charge.statedHeat ?? toAir.charge * (charge.airIn - chargeLiquid);
  const engineSoak = G_engine * (soak.engineTemperature - chargeLiquid);
  const ledger: HeatLedger = {
    charge: heat,
    engineSoak,
    hoseSoak: 0,
    reservoirSoak: 0,
    pump: 0,
    frontExchanger: 0,
  };
  const residual = heat + engineSoak;
  const temperatures: LoopTemperatures = {
    reservoir,
    pumpIn: reservoir,
    chargeCoolerIn: isFrontFirst(loop) ? front.freshAir : reservoir,
    chargeCoolerOut: chargeLiquid,
    frontIn: front.freshAir,
    frontOut: front.freshAir,
    returning: isFrontFirst(loop) ? chargeLiquid : front.freshAir,
  };
  const chargeCooler = coolerState(charge, { chargeCoolerIn: chargeLiquid }, heat, 0);
  return {
    status: 'no-flow',
    duty: duty.id,
    charge: charge.state,
    chargeOut: chargeCooler?.airOut ?? null,
    liquid: liquidState(prepared, liquid, Math.min(Math.max(reservoir, coldest), hottest)),
    temperatures,
    operating,
    air,
    chargeCooler,
    front: frontState(front, front.freshAir, site.ambientTemperature),
    ledger,
    residual,
    relativeResidual: relativeResidual(ledger, residual),
    margins: margins(prepared, temperatures, operating, reservoir),
    notes: [NO_FLOW, ...(chargeLiquid === boilingPoint ? [BOILS] : []), ...stackNotes(air)],
  };
}

const BOILS: Note = Object.freeze({
  code: 'loop.standing-liquid-boils',
  message:
    'the liquid standing in the charge cooler reaches its boiling point; the heat left over is the residual',
  quantity: 'residual',
});

const NO_FLOW: Note = Object.freeze({
  code: 'loop.no-flow',
  message:
    'the liquid stands still: the charge air leaves about as hot as the compressor delivers it',
});
