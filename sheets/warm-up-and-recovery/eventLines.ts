/** Lines of the drive with events: the balance with latent heat, the breaker, the times. */
import type { Side } from '$lib/job/evaluate';
import type { EventDrive } from '$lib/job/models/toDrive';
import type { Note } from '$lib/solver/errors';
import { breakerHeating, breakerTripTime, deratedBreaker } from '$lib/solver/feed/formulas';
import { breakerTimeConstant } from '$lib/solver/feed/heatFormulas';
import { balanceLine, formulaLine, type FormulaLine, type Line } from '$lib/solver/formula';
import * as events from '$lib/solver/loop/events/formulas';
import { pumpCurrent } from '$lib/solver/loop/events/parts';
import type { PreparedLoop } from '$lib/solver/loop/prepare';
import { heatKept } from '$lib/solver/loop/timeFormulas';
import type { Drive } from './study';

const FOLLOWED: Note = {
  code: 'events-integrated',
  message:
    'From the drive with what happens on the way: integrated piece by piece, each switch placed to a millisecond.',
};

export function eventLines(
  side: Side,
  prepared: PreparedLoop,
  plain: Drive,
  drive: EventDrive,
  hoseLiquid: number | null,
): Line[] {
  const { run } = drive;
  if (!(run.endTime > 0)) return [];
  return [
    ...breakerLines(side, prepared, drive),
    ...hoseLines(drive, hoseLiquid),
    ...timeLines(drive),
    ...meltingLines(drive),
    energyLine(drive),
    ...shiftLines(plain, drive),
  ];
}

/** At the start, from cold: what the breaker holds there, and when it would open. */
function breakerLines({ values }: Side, prepared: PreparedLoop, { request, run }: EventDrive) {
  const { breaker: feature } = request;
  const bay = run.history.bayAir[0];
  if (!feature || bay === undefined) return [];
  const { breaker, place } = feature;
  const outside = place === 'outside';
  const T = outside ? prepared.loop.site.ambientTemperature : bay;
  const holds = formulaLine(
    deratedBreaker,
    { I_r: breaker.rating, b: breaker.lossPerKelvin, T, T_r: breaker.referenceTemperature },
    {
      id: 'events-breaker-holds',
      statement: `Current the breaker holds in ${outside ? 'outside air' : 'the air of the bay'} at the start`,
      why: 'The hotter it sits, the less it holds; over the drive this moves with the bay.',
    },
  );
  const current = pumpCurrent(prepared, request.start.reservoir);
  const heating = formulaLine(
    breakerHeating,
    { I: current, I_h: holds.value },
    {
      id: 'events-breaker-heating',
      statement: 'Heat the breaker runs towards at the pump’s current; it opens above 1',
      why: 'Above one the pump will stop in mid-drive with nothing wrong with it.',
      notes: [
        {
          code: 'events-current',
          message:
            'Current of the pump at work with the liquid of the start: on its feed where that is worked out (sheet 8), else its stated power over its volts.',
        },
      ],
    },
  );
  if (!(heating.value > 1)) return [holds, heating];
  const tau = formulaLine(
    breakerTimeConstant,
    {
      t_m: values['feed.breaker.tripTime']!.si!,
      m: values['feed.breaker.tripMultiple']!.si!,
    },
    {
      id: 'events-breaker-tau',
      statement: 'Time constant of the breaker',
      why: 'A slow breaker rides through a short pull and opens on the long one.',
    },
  );
  return [
    holds,
    heating,
    tau,
    formulaLine(
      breakerTripTime,
      { tau: tau.value, x: heating.value, y_0: 0 },
      {
        id: 'events-trip-time',
        statement: 'Time until it opens, from cold, as if the bay stayed as at the start',
        why: 'A check by hand of the first trip in the list; a bay that warms brings it forward.',
      },
    ),
  ];
}

function hoseLines({ request, run }: EventDrive, V_h: number | null): FormulaLine[] {
  const Q = run.history.flow[0];
  if (!request.hoseDelay || V_h === null || !(Q! > 0)) return [];
  return [
    formulaLine(
      events.hoseTime,
      { V_h, Q: Q! },
      {
        id: 'hose-time',
        statement: 'Time the liquid spends in the hoses once round',
        why: 'A pull’s heat reaches the front exchanger only after its share of this; a pull shorter than that is over by then.',
        notes: [FOLLOWED],
      },
    ),
  ];
}

function timeLines({ request, run }: EventDrive): FormulaLine[] {
  const share = (id: string, statement: string, why: string, t_on: number) =>
    formulaLine(
      events.runningTime,
      { t_on, t: run.endTime },
      { id, statement, why, notes: [FOLLOWED] },
    );
  return [
    ...(run.flowTime < run.endTime
      ? [
          share(
            'flow-time',
            'Share of the drive in which liquid moves',
            'While it stands, the tank stays flat and the charge climbs: a calm gauge is no comfort.',
            run.flowTime,
          ),
        ]
      : []),
    ...(request.thermostat
      ? [
          share(
            'fan-time',
            'Share of the drive in which the fans run',
            'Fans that run all the time have nothing left for a hotter day.',
            run.fanTime,
          ),
        ]
      : []),
  ];
}

function meltingLines({ request, run }: EventDrive): FormulaLine[] {
  if (!request.ice) return [];
  return [
    formulaLine(
      events.meltingHeat,
      { m_0: run.history.iceMass[0]!, m_1: run.iceLeft },
      {
        id: 'melting-heat',
        statement: 'Heat that melted ice during the drive',
        why: 'A pound of ice takes up as much as a gallon of water does warming by some 17 °F (10 K), at one temperature.',
        notes: [
          {
            code: 'ice-mixed',
            message:
              'Ice and liquid are taken as having come to one temperature before the drive begins; what melted by then is in the temperature of the start.',
          },
        ],
      },
    ),
  ];
}

/** Both sides of the whole drive, latent heat included. */
function energyLine({ run }: EventDrive): Line {
  const { ledger } = run;
  return balanceLine(
    { formula: heatKept, x: { E_in: ledger.heatIn, E_out: ledger.heatOut } },
    {
      formula: events.keptInParts,
      x: { E_s: ledger.sensible, E_h: ledger.hoses, E_m: ledger.melting, E_v: ledger.steam },
    },
    {
      id: 'events-energy',
      statement: 'Heat in less heat out is what was taken up, melted and boiled off',
      why: 'Latent heat moves no thermometer; only the balance shows it.',
      unknown: {
        tex: '\\delta_E',
        quantity: 'ratio',
        name: 'gap between both sides, over the largest part',
        value: ledger.relative,
      },
      method:
        'All parts are gathered along with the temperatures by the error-controlled integrator; steam counts with its latent heat and its warmth above the ice point.',
      notes: [FOLLOWED],
    },
  );
}

function shiftLines(plain: Drive, { run }: EventDrive): FormulaLine[] {
  const line = (id: string, statement: string, T_e: number, T_p: number) =>
    formulaLine(
      events.peakShift,
      { T_e, T_p },
      {
        id,
        statement,
        why: 'What a plain warm-up does not show; large, and the events are what to mend.',
        notes: [FOLLOWED],
      },
    );
  const { peakCharge, peakReservoir } = plain.run;
  return [
    ...(peakCharge && run.peakCharge
      ? [
          line(
            'charge-shift',
            'What happens on the way adds to the highest charge air',
            run.peakCharge.value,
            peakCharge.value,
          ),
        ]
      : []),
    line(
      'reservoir-shift',
      'What happens on the way adds to the highest reservoir',
      run.peakReservoir.value,
      peakReservoir.value,
    ),
  ];
}
