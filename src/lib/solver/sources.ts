/** How sure we are of a source: said beside every line that uses it. */
export type SourceStanding =
  | 'standard' // a published standard
  | 'published' // a book, paper or handbook
  | 'definition' // follows from a definition or a balance
  | 'common practice' // a fact of the trade, no source
  | 'from memory'; // recalled, not compared with the page

/** Where a law or a value comes from. */
export interface Source {
  readonly cite: string;
  readonly standing: SourceStanding;
}

const source = (standing: SourceStanding, cite: string): Source => ({ cite, standing });

/** Every source the sheets quote, once. Add here, then refer to it by name. */
export const SOURCES = {
  definition: source('definition', 'Definition'),
  energyBalance: source('definition', 'First law of thermodynamics, steady flow'),
  lumpedCapacity: source(
    'published',
    'Bergman et al., Fundamentals of Heat and Mass Transfer, ch. 5, lumped capacitance',
  ),
  kaysLondon: source('published', 'Kays & London, Compact Heat Exchangers, 3rd ed. 1984'),
  bergman3: source(
    'published',
    'Bergman et al., Fundamentals of Heat and Mass Transfer, ch. 3, straight fins',
  ),
  changWang1997: source(
    'from memory',
    'Chang & Wang, Int. J. Heat Mass Transfer 40 (1997) 533; 89 % of its data within ±15 %',
  ),
  chang2000: source(
    'from memory',
    'Chang, Hsu, Lin & Wang, Int. J. Heat Mass Transfer 43 (2000) 2237; 83 % within ±15 %',
  ),
  manglikBergles1995: source(
    'from memory',
    'Manglik & Bergles, Exp. Thermal Fluid Sci. 10 (1995) 171; data within ±20 %',
  ),
  shahLondon1978: source(
    'from memory',
    'Shah & London, Laminar Flow Forced Convection in Ducts, 1978',
  ),
  crossflowSeries: source(
    'published',
    'Crossflow, both unmixed, exact series: Nusselt; Mason 1954; Baclic 1978, doi:10.1115/1.3450864',
  ),
  idealGasMixture: source(
    'published',
    'Ideal gas law with Dalton’s partial pressures, any thermodynamics text; no air dissolves',
  ),
  darcyWeisbach: source('published', 'Darcy-Weisbach; Crane TP-410 for the loss coefficients'),
  churchill1977: source(
    'from memory',
    'Churchill, Friction-factor equation spans all fluid-flow regimes, Chem. Eng. 84(24) 1977',
  ),
  affinity: source('standard', 'Affinity laws; ISO 9906:2012 Rotodynamic pumps'),
  iso9906: source('standard', 'ISO 9906:2012 Rotodynamic pumps, hydraulic performance tests'),
  npshFall: source(
    'common practice',
    'Our own stated law, no source but its one fixed point: 3 % of the head lost at NPSH3 (ISO 9906:2012)',
  ),
  budris2009: source('published', 'Budris, WaterWorld, June 2009 (read as an excerpt)'),
  fanLaws: source('standard', 'Fan laws; ISO 5801:2017 Fans, performance testing'),
  iso2533: source('standard', 'ISO 2533:1975 Standard atmosphere (from memory)'),
  iapwsIF97: source('standard', 'IAPWS R7-97(2012), Industrial Formulation 1997'),
  melinder2010: source(
    'published',
    'Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010',
  ),
  raoult: source('from memory', "Raoult's law, glycol taken as non-volatile; good to about 5 %"),
  compressorText: source(
    'published',
    'Isentropic compression with efficiency, any thermodynamics text',
  ),
  astmB258: source('standard', 'ASTM B258, Standard nominal diameters of AWG sizes'),
  iec60028: source(
    'standard',
    'IEC 60028, International standard of resistance for copper (value seen, standard not read)',
  ),
  iec60255: source('from memory', 'IEC 60255-149, Thermal electrical relays, cold and hot curve'),
  ohmKirchhoff: source('definition', "Ohm's and Kirchhoff's laws"),
  abycE11: source('published', 'ABYC E-11 (boats), 105 °C wire, as reprinted; a stated practice'),
  iso6722: source(
    'from memory',
    'ISO 6722-1:2011, Road vehicles, 60 V and 600 V single-core cables',
  ),
  heywood: source('published', 'Heywood, Internal Combustion Engine Fundamentals, sec. 2.10'),
  steinhartHart: source(
    'published',
    'Steinhart & Hart, Calibration curves for thermistors, Deep-Sea Research 15 (1968) 497',
  ),
  betaLaw: source('common practice', 'Beta law of thermistors, as on any data sheet'),
  probeTable: source(
    'published',
    'Points of the probe; between them 1/T against ln R by Fritsch & Carlson 1980',
  ),
  iec60063: source('standard', 'IEC 60063:2015, Preferred number series (lists from memory)'),
  gum: source('standard', 'JCGM 100:2008, Guide to the Expression of Uncertainty (GUM), 5.1.2'),
  weightedMean: source(
    'published',
    'Mean weighted by inverse variances, any text of statistics; Birge, Phys. Rev. 40 (1932) 207',
  ),
  altimeter: source(
    'from memory',
    'Reduction to sea level by the standard atmosphere, ISO 2533:1975',
  ),
  bayes: source('published', 'Bayes’ theorem, any text of statistics'),
  gauss: source('published', 'Normal law of errors, any text of statistics'),
  diagnosisErrors: source(
    'common practice',
    'Errors that are independent add by their squares; the model’s own share is our statement, no source',
  ),
  gumSupplement1: source(
    'standard',
    'JCGM 101:2008, GUM Supplement 1, propagation of distributions (examples from memory)',
  ),
  saltelli2010: source(
    'from memory',
    'Saltelli et al., Comput. Phys. Commun. 181 (2010) 259, shares of the variance',
  ),
  commonPractice: source('common practice', 'Common practice, no source'),
} as const satisfies Record<string, Source>;
