let barred = false;

/** A locked screen asks for nothing: what happens meanwhile is asked for when somebody is in again. */
export function setBarred(now: boolean): void {
  barred = now;
}

export const isBarred = (): boolean => barred;
