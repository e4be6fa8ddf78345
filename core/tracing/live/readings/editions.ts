import limits from '../../../../assets/bench/rails.json' with { type: 'json' };

export const RAILS = ['+12V', '+5V', '+3.3V', '-12V', '+5VSB', '-5V'] as const;
export type Rail = (typeof RAILS)[number];

/** Where the probe sits: limits hold at the load end of a connector, and differ by it since ATX 3.0. */
export const CONNECTORS = ['board', 'processor', 'pcie', 'drive'] as const;
export type Connector = (typeof CONNECTORS)[number];

export type RailLimit = {
  readonly rail: Rail;
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
  /** The per cent below and above nominal that the printed volts stand for. */
  readonly percent: readonly [number, number];
  readonly connector?: Connector;
  /** Holds only while the rail carries its peak load. */
  readonly atPeak?: boolean;
  readonly optional?: boolean;
  readonly source: string;
};

/** One edition of the design guide for desktop supplies. */
export type Edition = {
  readonly id: string;
  readonly name: string;
  readonly rails: readonly RailLimit[];
  /** Rails that a supply of this edition may lack. */
  readonly absent: readonly Rail[];
  readonly powerGood: { readonly fromMs: number; readonly toMs: number; readonly source: string } | null;
};

/** Every edition there is data for, oldest first. */
export const EDITIONS = limits.editions as unknown as readonly Edition[];
export const ABSENT_SOURCE: string = limits.absentSource;
export const POWER_ON = limits.powerOn;
/** Volts below which a rail is not there. */
export const NOTHING_BELOW: number = limits.nothingBelow.volts;

/** The edition of this id; unknown stands for every edition since 2003 that may be meant. */
export function editionsMeant(id: string | null): readonly Edition[] {
  const one = EDITIONS.filter((edition) => edition.id === id);
  return one.length > 0 ? one : EDITIONS.filter((edition) => edition.powerGood !== null);
}
