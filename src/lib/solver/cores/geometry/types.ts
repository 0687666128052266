/** A core as a ruler or a parts page tells it. SI: m, W/(m K). */

export type FinKind =
  | {
      readonly kind: 'louvered';
      readonly louverAngleDegrees: number;
      readonly louverPitch: number;
      readonly louverLength: number;
    }
  | { readonly kind: 'offset-strip'; readonly stripLength: number }
  | { readonly kind: 'plain' };

/** Flat tubes with fins between them. */
export interface CoreGeometry {
  /** Length of a tube, end tank to end tank. */
  readonly tubeRun: number;
  /** Across the tubes: how far they stack. */
  readonly stack: number;
  /** Along the air. */
  readonly depth: number;
  /** Outside, across the gap. */
  readonly tubeHeight: number;
  readonly tubeWall: number;
  /** Webs that divide a tube along its depth; 0: one open passage. */
  readonly webs: number;
  /** From tube to tube. */
  readonly finHeight: number;
  readonly finPitch: number;
  readonly finThickness: number;
  readonly fin: FinKind;
  /** How often the liquid crosses from tank to tank. */
  readonly passes: number;
  /** Inside of the two ports. */
  readonly portBore: number;
  /** Of fins and tubes; aluminium sheet about 180 to 220. */
  readonly conductivity: number;
}
