import type { Brand } from './brand.ts';

export type OwnerId = Brand<string, 'OwnerId'>;
export type MachineId = Brand<string, 'MachineId'>;
export type JobId = Brand<string, 'JobId'>;
export type PartId = Brand<string, 'PartId'>;
export type EnquiryId = Brand<string, 'EnquiryId'>;
export type QuestionId = Brand<string, 'QuestionId'>;
export type StaffId = Brand<string, 'StaffId'>;
/** Made by the asker; the same id asked twice gives the first answer and no second entry. */
export type CommandId = Brand<string, 'CommandId'>;

/** A text as an id, where it is known to be one: read from a path, a stream's name, or made anew. */
export const machineId = (text: string): MachineId => text as MachineId;

/** Makes a fresh, unguessable id. Handed in from outside: core has no randomness of its own. */
export type NewId = () => string;
