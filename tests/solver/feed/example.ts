import type { FeedCircuit } from '$lib/solver/feed/circuit';

/** The feed of the trade's worked question: 13.8 V, 18 A, 14 gauge, 14 ft each way, copper at 60 °C. */
export const workedFeed: FeedCircuit = {
  source: { engineRunning: 13.8, engineOff: 12.6, running: true },
  protection: { kind: 'breaker', resistance: 0.1 / 18, rating: 20 },
  wire: {
    size: { by: 'awg', awg: 14 },
    lengthOneWay: 14 * 0.3048,
    temperature: 333.15,
    shareBeforeRelay: 0.25,
  },
  relays: [{ name: 'pump relay', resistance: 0.2 / 18, rating: 30 }],
  connectors: [
    { name: 'pump plug', resistance: 0.15 / 18, side: 'feed' },
    { name: 'ground ring', resistance: 0.1 / 18, side: 'ground' },
  ],
};
