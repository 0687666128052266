/** Upgrades compared, as data: results, lines, findings. */
import type { ContentOf } from '../types';

export const content: ContentOf = () => ({ results: [], lines: [], findings: [] });
