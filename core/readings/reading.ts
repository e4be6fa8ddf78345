import type { ReportGap, SaidCardSlot, SaidDrive, SaidMemorySlot } from '../custody/machineReport.ts';

/** General-purpose system tools whose output is read. */
export const TOOLS = ['dmidecode', 'lshw', 'lspci', 'lscpu', 'lsblk', 'smartctl', 'sensors'] as const;
export type Tool = (typeof TOOLS)[number];

export type ProcessorReading = {
  readonly name: string | null;
  readonly socket: string | null;
  readonly cores: number | null;
  readonly threads: number | null;
  readonly maker: string | null;
  readonly serial: string | null;
};

/** A memory slot with what the plain form leaves out. */
export type ModuleReading = SaidMemorySlot & {
  /** `null`: the report does not say whether anything is in it. */
  readonly filled: boolean | null;
  readonly maker: string | null;
  readonly partNumber: string | null;
  readonly serial: string | null;
  /** Configured voltage, V. */
  readonly volts: number | null;
  /** Error-correcting: the module is wider in all than in data bits. */
  readonly checked: boolean | null;
  readonly buffering: 'unbuffered' | 'registered' | null;
};

export type DriveReading = SaidDrive & {
  readonly serial: string | null;
  readonly firmware: string | null;
  readonly bytes: number | null;
  readonly facts: DriveFacts;
};

/** What a drive says of its health beyond the plain form; `null` is "not said". */
export type DriveFacts = {
  readonly reportedUncorrectable: number | null;
  readonly commandTimeouts: number | null;
  /** Attributes at or below their threshold, by name: now, and in the past. */
  readonly failingNow: readonly string[];
  readonly failedBefore: readonly string[];
  /** NVMe critical warning byte. */
  readonly criticalWarning: number | null;
  readonly spare: number | null;
  readonly spareThreshold: number | null;
  readonly unsafeShutdowns: number | null;
  readonly powerCycles: number | null;
  /** °C now, and the limits the drive names for itself. */
  readonly celsius: number | null;
  readonly warningCelsius: number | null;
  readonly criticalCelsius: number | null;
  readonly exitStatus: number | null;
};

export const NO_DRIVE_FACTS: DriveFacts = {
  reportedUncorrectable: null,
  commandTimeouts: null,
  failingNow: [],
  failedBefore: [],
  criticalWarning: null,
  spare: null,
  spareThreshold: null,
  unsafeShutdowns: null,
  powerCycles: null,
  celsius: null,
  warningCelsius: null,
  criticalCelsius: null,
  exitStatus: null,
};

/** A temperature as `sensors` gives it, with the limits the chip names, °C. */
export type TemperatureReading = {
  readonly chip: string;
  readonly label: string;
  readonly celsius: number;
  readonly high: number | null;
  readonly critical: number | null;
};

export type Named = { readonly vendor: string | null; readonly name: string | null };
export type Firmware = {
  readonly vendor: string | null;
  readonly version: string | null;
  readonly date: string | null;
};
export type Card = { readonly kind: string; readonly name: string };

/** What one tool's output says. What it does not speak of is absent; what it should say and does not is a gap. */
export type Contribution = {
  readonly tool: Tool;
  readonly board?: Named;
  readonly system?: Named;
  readonly chassis?: string | null;
  readonly firmware?: Firmware;
  readonly processors?: readonly ProcessorReading[];
  readonly slots?: readonly ModuleReading[];
  readonly cardSlots?: readonly SaidCardSlot[];
  readonly cards?: readonly Card[];
  readonly drives?: readonly DriveReading[];
  readonly temperatures?: readonly TemperatureReading[];
  /** Serial numbers of system, board and case: identifying, kept only with consent. */
  readonly serials?: { readonly [of: string]: string };
  readonly gaps: readonly ReportGap[];
};

/** All that was read of one text, before it is put into the plain form. */
export type MachineReading = Required<Omit<Contribution, 'tool'>> & { readonly tools: readonly Tool[] };

/** A reading of nothing. */
export const NOTHING_READ: MachineReading = {
  tools: [],
  board: { vendor: null, name: null },
  system: { vendor: null, name: null },
  chassis: null,
  firmware: { vendor: null, version: null, date: null },
  processors: [],
  slots: [],
  cardSlots: [],
  cards: [],
  drives: [],
  temperatures: [],
  serials: {},
  gaps: [],
};
