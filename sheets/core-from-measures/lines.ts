/** The numbered lines of one core, so that a reader with a pocket calculator can rebuild it. */
import { airCp, airDensity, airViscosity } from '$lib/solver/air/air';
import { louveredFinOf, offsetStripFinOf } from '$lib/solver/cores/geometry/airSide';
import * as formulas from '$lib/solver/cores/geometry/formulas';
import { finsPerLength, plainNusselt, prandtl } from '$lib/solver/cores/geometry/terms';
import { offsetStripRatios } from '$lib/solver/cores/geometry/offsetStripFin';
import { coolantProperties } from '$lib/solver/fluids/coolant';
import type { Note } from '$lib/solver/errors';
import { formulaLine, type Line } from '$lib/solver/formula';
import { AIR_PROPERTIES, liquidProperties } from '../exchangers/ratingLines';
import { againstRatingLines } from './ratingLines';
import { CORE_WORDS, type MeasuredCore } from './measured';

export function coreLines(core: MeasuredCore): Line[] {
  return [...areaLines(core), ...airLines(core), ...liquidLines(core), ...againstRatingLines(core)];
}

const named = (core: MeasuredCore) => {
  const { id, title } = CORE_WORDS[core.core];
  return (key: string, says: string, more: { why?: string; notes?: readonly Note[] } = {}) => ({
    id: `${id}.${key}`,
    statement: `${title}: ${says}`,
    ...more,
  });
};

function areaLines(core: MeasuredCore): Line[] {
  const { geometry: g, made } = core;
  const { surfaces: s } = made;
  const at = named(core);
  const n_f = finsPerLength(g);
  const N = s.tubes;
  const { tubeRun: L, depth: T_d, finHeight: F_l, finThickness: delta } = g;
  return [
    formulaLine(
      formulas.tubesThatFit,
      { H: g.stack, F_l, D_m: g.tubeHeight },
      at('tubes', 'tubes that fit into its height', {
        why: 'Whole tubes are counted, with fins outside at both ends.',
      }),
    ),
    formulaLine(
      formulas.finAreaFormula,
      { n_f, L, N, F_l, T_d },
      at('fin-area', 'fin area', {
        why: 'Air gives up heat to this, so it is mostly what is paid for in a core.',
      }),
    ),
    formulaLine(
      formulas.bareAreaFormula,
      { N, L, T_d, n_f, delta },
      at('bare-area', 'tube area between the fins', {
        why: 'The rest of the surface: always at full temperature, as no fin has to carry its heat.',
      }),
    ),
    formulaLine(
      formulas.freeAreaFormula,
      { N, F_l, L, n_f, delta },
      at('free-area', 'area left for the air to flow through', {
        why: 'Closer fins add area for heat and take area from the flow.',
      }),
    ),
  ];
}

function airLines(core: MeasuredCore): Line[] {
  const { geometry: g, made, point } = core;
  const { surfaces: s, air } = made;
  const at = named(core);
  const T = point.airInlet;
  const areas = { A_f: s.finArea, A_b: s.bareArea };
  const G = air.massVelocity;
  return [
    formulaLine(
      formulas.massVelocityFormula,
      { m: point.airMassFlow, A_c: s.freeFlowArea },
      at('mass-velocity', 'air per area it flows through', {
        why: 'Faster between the fins means more heat per area, and more pressure asked of the fans.',
      }),
    ),
    formulaLine(
      formulas.airReynolds,
      { G, L_r: air.length, mu: airViscosity(T) },
      at('air-reynolds', 'Reynolds number of the air', {
        why: 'The correlations hold only for a range of it; outside they are a guess.',
        notes: [AIR_PROPERTIES],
      }),
    ),
    colburnLine(core),
    formulaLine(
      formulas.coefficientFromColburn,
      { j: air.j, G, c_p: airCp(T), Pr: prandtl(T) },
      at('air-coefficient', 'heat transfer coefficient of the air', {
        why: 'What louvers buy: two to three times that of plain fins.',
        notes: [AIR_PROPERTIES],
      }),
    ),
    formulaLine(
      formulas.finParameter,
      { h: air.h, k: g.conductivity, delta: g.finThickness, F_l: g.finHeight },
      at('fin-parameter', 'how hard a fin is worked', {
        why: 'It tells whether thicker fins would pay: below about a half they would not.',
      }),
    ),
    formulaLine(
      formulas.finEfficiencyFormula,
      { x: finWork(core) },
      at('fin-efficiency', 'share of a fin that works', {
        why: 'Thin or tall fins cool off before their middle.',
      }),
    ),
    formulaLine(
      formulas.surfaceEfficiencyFormula,
      { ...areas, eta_f: air.finEfficiency },
      at('surface-efficiency', 'share of all the surface that works', {
        why: 'Area that does not work still blocks air: near one, the fins are well chosen.',
      }),
    ),
    formulaLine(
      formulas.airConductanceFormula,
      { ...areas, eta_o: air.surfaceEfficiency, h: air.h },
      at('air-conductance', 'conductance of the air side', {
        why: 'Mostly the weak side of the core: what is gained here is gained by the whole.',
      }),
    ),
    ...frictionLines(core),
    formulaLine(
      formulas.airPressureFormula,
      {
        G,
        rho: airDensity({ T, p: point.airPressure }),
        f: air.f,
        A: s.airArea,
        A_c: s.freeFlowArea,
      },
      at('air-pressure', 'pressure the air loses', {
        why: 'What the fans must find: a core that loses twice the pressure gets less air.',
      }),
    ),
  ];
}

const finWork = ({ geometry: g, made }: MeasuredCore) =>
  formulas.finParameter.value({
    h: made.air.h,
    k: g.conductivity,
    delta: g.finThickness,
    F_l: g.finHeight,
  });

function colburnLine(core: MeasuredCore): Line {
  const { geometry: g, made, point } = core;
  const { Re } = made.air;
  const at = named(core);
  const notes = made.air.notes;
  switch (g.fin.kind) {
    case 'louvered': {
      const fin = louveredFinOf(g, made.surfaces);
      return formulaLine(
        formulas.louverColburn,
        {
          Re,
          theta: fin.louverAngleDegrees,
          F_p: fin.finPitch,
          L_p: fin.louverPitch,
          F_l: fin.finHeight,
          T_d: fin.flowDepth,
          L_l: fin.louverLength,
          T_p: fin.tubePitch,
          delta: fin.finThickness,
        },
        at('colburn', 'Colburn factor of its louvered fins', {
          why: 'The part of the answer that comes from wind tunnels, good to about 15 %.',
          notes,
        }),
      );
    }
    case 'offset-strip': {
      const r = offsetStripRatios(offsetStripFinOf(g));
      return formulaLine(
        formulas.stripColburn,
        { Re, a: r.spacingOverHeight, d: r.thicknessOverStrip, g: r.thicknessOverSpacing },
        at('colburn', 'Colburn factor of its offset strips', {
          why: 'The part of the answer that comes from wind tunnels, good to about 20 %.',
          notes,
        }),
      );
    }
    case 'plain':
      return formulaLine(
        formulas.ductColburn,
        { Nu: plainNusselt(made.air, prandtl(point.airInlet)), Re, Pr: prandtl(point.airInlet) },
        at('colburn', 'Colburn factor of its plain fins', {
          why: 'Plain passages are known well; they also pass the least heat.',
          notes: [
            ...notes,
            {
              code: 'duct-nusselt',
              message:
                'Nusselt number of a rectangular passage: Shah & London 1978 with Hausen’s term for the start, Gnielinski where turbulent.',
            },
          ],
        }),
      );
  }
}

const FRICTION_WHY =
  'Louvers that pass more heat also drag more air: this is the other side of the bargain.';

function frictionLines(core: MeasuredCore): Line[] {
  const { geometry: g, made } = core;
  const { Re } = made.air;
  const at = named(core);
  if (g.fin.kind === 'louvered') {
    const fin = louveredFinOf(g, made.surfaces);
    return formulas
      .louverFriction(Re, fin)
      .map(({ key, says, formula, x }) =>
        formulaLine(formula, x, at(key, says, { why: FRICTION_WHY })),
      );
  }
  if (g.fin.kind === 'offset-strip') {
    const r = offsetStripRatios(offsetStripFinOf(g));
    return [
      formulaLine(
        formulas.stripFriction,
        { Re, a: r.spacingOverHeight, d: r.thicknessOverStrip, g: r.thicknessOverSpacing },
        at('friction', 'friction factor of its offset strips', {
          why: 'It decides how much air the fans get through, and so undoes part of what the strips gain.',
        }),
      ),
    ];
  }
  return [];
}

function liquidLines(core: MeasuredCore): Line[] {
  const { geometry: g, made, point } = core;
  const { surfaces: s, liquid } = made;
  const at = named(core);
  const { rho, mu, k } = coolantProperties(point.coolant, point.liquidInlet);
  const notes = [liquidProperties(point.coolant, 'at the liquid inlet')];
  const V = liquid.velocity;
  return [
    formulaLine(
      formulas.tubeVelocity,
      { Q: point.liquidFlow, A_p: s.passArea },
      at('tube-velocity', 'liquid velocity in its tubes', {
        why: 'Two passes double it: more heat per area, and about six times the loss.',
      }),
    ),
    formulaLine(
      formulas.tubeReynolds,
      { rho, V, D: s.tubeDiameter, mu },
      at('tube-reynolds', 'Reynolds number of the liquid', {
        why: 'Below about 2300 the liquid creeps in layers, and more flow adds little heat.',
        notes,
      }),
    ),
    formulaLine(
      formulas.tubeCoefficient,
      { Nu: liquid.Nu, k, D: s.tubeDiameter },
      at('tube-coefficient', 'heat transfer coefficient of the liquid', {
        why: 'In creeping flow it hardly minds the flow: narrow tubes help, a pump does not.',
        notes: [
          ...notes,
          ...liquid.notes,
          {
            code: 'tube-nusselt',
            message:
              'Nusselt number of a flat passage: Shah & London 1978 with Hausen’s term for the start, Gnielinski where turbulent.',
          },
        ],
      }),
    ),
    formulaLine(
      formulas.tubeConductance,
      { h_l: liquid.h, A_l: s.liquidArea },
      at('tube-conductance', 'conductance of the liquid side', {
        why: 'If it is far above the air side, a larger pump does nothing for this core.',
      }),
    ),
    formulaLine(
      formulas.tubePressure,
      {
        rho,
        n: g.passes,
        f: liquid.f,
        L: g.tubeRun,
        D: s.tubeDiameter,
        V,
        V_p: liquid.portVelocity,
      },
      at('tube-pressure', 'pressure the liquid loses', {
        why: 'The pump must find it: a core with a good figure and a high loss may carry less on the vehicle.',
        notes,
      }),
    ),
    formulaLine(
      formulas.coreConductance,
      { hA_a: made.air.hA, R_w: made.wallResistance, hA_l: liquid.hA },
      at('conductance', 'conductance of the whole core', {
        why: 'Air, metal and liquid in a row: the worst of the three decides.',
      }),
    ),
  ];
}
