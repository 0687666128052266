/** Lines of the fuse or breaker: does it protect the wire, does it hold the pump. */
import type { Side } from '$lib/job/evaluate';
import {
  breakerHeating,
  breakerResetTime,
  breakerTripTime,
  deratedBreaker,
} from '$lib/solver/feed/formulas';
import {
  breakerPeriod,
  breakerTimeConstant,
  fuseMargin,
  wireMayCarry,
} from '$lib/solver/feed/heatFormulas';
import { formulaLine, type FormulaLine, type Line } from '$lib/solver/formula';
import type { Running, Study } from './study';

/** What the wire may carry against what protects it. */
export function ampacityLines({ values }: Side, { supply, carries }: Study): Line[] {
  if (!carries) return [];
  const may = formulaLine(
    wireMayCarry,
    { I_t: carries.table, T_a: values['feed.wire.airAround']!.si! },
    {
      id: 'wire-carries',
      statement: 'Current the wire may carry where it lies',
      why: 'In a hot bay it is far less than the table says; beyond it the insulation softens.',
      notes: [
        {
          code: 'ampacity-table',
          message:
            'Table value of the gauge at or next below this wire, single, 105 °C insulation; a practice for boats, road makers print none.',
        },
      ],
    },
  );
  return [
    may,
    formulaLine(
      fuseMargin,
      { I_w: may.value, I_r: supply.circuit.protection.rating },
      {
        id: 'fuse-margin',
        statement: 'What the wire may carry over the rating that protects it',
        why: 'The fuse protects the wire, not the pump. Below zero the wire is the fuse.',
      },
    ),
  ];
}

/** The breaker where it sits, and over time at the pump's current. */
export function breakerLines({ values }: Side, study: Study, s: Running | null): Line[] {
  const { breaker } = study.supply;
  if (!breaker) return [];
  const si = (path: string) => values[path]!.si!;
  const { thermal, ambient } = breaker;
  const holds = formulaLine(
    deratedBreaker,
    {
      I_r: thermal.rating,
      b: thermal.lossPerKelvin,
      T: ambient,
      T_r: thermal.referenceTemperature,
    },
    {
      id: 'breaker-holds',
      statement: 'Current the breaker holds where it sits',
      why: 'A thermal breaker in a hot bay opens with nothing wrong behind it.',
    },
  );
  if (!s) return [holds];
  const heating = formulaLine(
    breakerHeating,
    { I: s.current, I_h: holds.value },
    {
      id: 'breaker-heating',
      statement: 'Heat of the breaker at the pump’s current; it opens above 1',
      why: 'Above one it will open for certain; the rest is only when.',
    },
  );
  if (!(heating.value > 1)) return [holds, heating];
  return [holds, heating, ...openingLines(si, study, heating.value)];
}

function openingLines(si: (path: string) => number, study: Study, x: number): FormulaLine[] {
  const tau = formulaLine(
    breakerTimeConstant,
    { t_m: si('feed.breaker.tripTime'), m: si('feed.breaker.tripMultiple') },
    {
      id: 'breaker-time-constant',
      statement: 'Time constant of the breaker, from one point of its maker’s curve',
      why: 'It decides whether a short overload passes unseen.',
    },
  );
  const cold = formulaLine(
    breakerTripTime,
    { tau: tau.value, x, y_0: 0 },
    {
      id: 'trip-time',
      statement: 'Time until it opens, from cold',
      why: 'A pump that dies after this long and comes back by itself is telling on its breaker.',
    },
  );
  if (study.supply.breaker?.thermal.reset !== 'automatic') return [tau, cold];
  const r = si('feed.breaker.resetState');
  const off = formulaLine(
    breakerResetTime,
    { tau: tau.value, r },
    {
      id: 'off-time',
      statement: 'Time until it closes again',
      why: 'So long the liquid stands still and the charge climbs.',
    },
  );
  const on = formulaLine(
    breakerTripTime,
    { tau: tau.value, x, y_0: r },
    {
      id: 'on-time',
      statement: 'Time until it opens again',
      why: 'Shorter than the first time, since the strip is still warm: it then cycles.',
    },
  );
  return [
    tau,
    cold,
    off,
    on,
    formulaLine(
      breakerPeriod,
      { t_on: on.value, t_off: off.value },
      {
        id: 'period',
        statement: 'One round of open and closed',
        why: 'Taken to cool as fast as it heats: stated, not measured. Time yours and compare.',
      },
    ),
  ];
}
