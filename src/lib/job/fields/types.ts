/** What an input of a job is. Fields are data: the sheets draw them, the job reads and checks them. */
import type { Quantity } from '$lib/solver/quantity';
import type { SourceStanding } from '$lib/solver/sources';

export type GroupId =
  | 'title'
  | 'site'
  | 'coolant'
  | 'engine'
  | 'traffic'
  | 'cruise'
  | 'pull'
  | 'chargeCooler'
  | 'frontExchanger'
  | 'chargeMeasures'
  | 'frontMeasures'
  | 'hoses'
  | 'pump'
  | 'feed'
  | 'feedWire'
  | 'feedDraw'
  | 'feedProtection'
  | 'reservoir'
  | 'reservoirQuestion'
  | 'suction'
  | 'fans'
  | 'airPath'
  | 'soak'
  | 'schedule'
  | 'events'
  | 'limits'
  | 'runaway'
  | 'upgrades'
  | 'measuredOnce'
  | 'measuredTraffic'
  | 'measuredCruise'
  | 'probeBaths'
  | 'probeLaw'
  | 'probeCircuit'
  | 'probeTrim'
  | 'probeLot'
  | 'meterRuns'
  | 'meterMade'
  | 'meterPlace'
  | 'instruments'
  | 'log'
  | 'whatItTakes'
  | 'view';

interface FieldHead {
  /** Flat and dotted; the key in the job file. */
  readonly path: string;
  readonly label: string;
  /** TeX of the symbol. */
  readonly symbol?: string;
  /** Where and how to measure it, one sentence. */
  readonly ask: string;
  /** The usual range in words, and how sure we are of it. */
  readonly typical?: { readonly text: string; readonly standing: SourceStanding };
}

export interface QuantityField extends FieldHead {
  readonly kind: 'quantity';
  readonly quantity: Quantity;
  /** As a person would type it. */
  readonly default: string;
  /** How sure we are that the default is typical. */
  readonly standing: SourceStanding;
  /** Widest values taken, SI. */
  readonly min: number;
  readonly max: number;
  readonly integer?: true;
  /** May stay empty: nothing is then known, and nothing stands in for it. Its default is empty. */
  readonly optional?: true;
  /** What a text may look like, where the default does not show it. */
  readonly example?: string;
}

export interface Choice {
  readonly value: string;
  readonly label: string;
}

export interface ChoiceField extends FieldHead {
  readonly kind: 'choice';
  readonly choices: readonly Choice[];
  readonly default: string;
  readonly standing: SourceStanding;
}

/** One column of a table. An optional cell may stay empty. */
export type Column = {
  readonly key: string;
  readonly label: string;
  readonly optional?: true;
} & (
  | {
      readonly kind: 'quantity';
      readonly quantity: Quantity;
      readonly min: number;
      readonly max: number;
    }
  | { readonly kind: 'choice'; readonly choices: readonly Choice[] }
);

export interface TableField extends FieldHead {
  readonly kind: 'table';
  readonly columns: readonly Column[];
  readonly default: readonly (readonly string[])[];
  readonly standing: SourceStanding;
  readonly minRows: number;
  readonly maxRows: number;
}

export interface TextField extends FieldHead {
  readonly kind: 'text';
  readonly maxLength: number;
}

export type FieldSpec = QuantityField | ChoiceField | TableField | TextField;

export interface FieldGroup {
  readonly id: GroupId;
  readonly title: string;
  readonly fields: readonly FieldSpec[];
}
