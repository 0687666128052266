import type { SheetAbout } from '../types';

export const about: SheetAbout = {
  slug: 'pump-feed',
  number: 8,
  title: 'Pump feed',
  purpose:
    'What every yard of wire, joint, relay and breaker takes of the pump’s volts, what the pump then moves, and the reading to expect at each point. Walk the circuit with a meter beside this sheet.',
  cautions: ['wiring', 'engine', 'scald'],
};
