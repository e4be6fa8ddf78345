import type { StaffId } from '../../../core/ids.ts';

/** Who is at one screen: a window's port, or a browser that came in by the one-time address. Kept by the service alone. */
export type ScreenSession = {
  /** The station's name in the journal. */
  readonly station: string;
  who: StaffId | null;
  /** They came in by their PIN; else they only said who they are. */
  proved: boolean;
  locked: boolean;
  /** When a hand was last on it, by the steady clock. */
  stirredAt: number;
};

/** A screen at which nobody has said who they are. */
export const newSession = (station: string): ScreenSession => ({
  station,
  who: null,
  proved: false,
  locked: false,
  stirredAt: 0,
});
