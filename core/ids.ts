import { z } from 'zod';
import { type Brand, brand } from './brand.ts';

export type OwnerId = Brand<string, 'OwnerId'>;
export type MachineId = Brand<string, 'MachineId'>;
export type JobId = Brand<string, 'JobId'>;
export type PartId = Brand<string, 'PartId'>;
export type EnquiryId = Brand<string, 'EnquiryId'>;
export type QuestionId = Brand<string, 'QuestionId'>;
export type StaffId = Brand<string, 'StaffId'>;
/** Made by the asker; the same id asked twice gives the first answer and no second entry. */
export type CommandId = Brand<string, 'CommandId'>;

/** A text as an id, where it is known to be one: read from a path or a stream's name, or made anew. */
export const ownerId = brand<OwnerId>();
export const machineId = brand<MachineId>();
export const jobId = brand<JobId>();
export const partId = brand<PartId>();
export const enquiryId = brand<EnquiryId>();
export const questionId = brand<QuestionId>();
export const staffId = brand<StaffId>();
export const commandId = brand<CommandId>();

/** Ids as they stand in entries. */
export const ownerIdShape = z.string().transform(ownerId);
export const machineIdShape = z.string().transform(machineId);
export const jobIdShape = z.string().transform(jobId);
export const partIdShape = z.string().transform(partId);
export const enquiryIdShape = z.string().transform(enquiryId);
export const questionIdShape = z.string().transform(questionId);
export const staffIdShape = z.string().transform(staffId);

/** Makes a fresh, unguessable id. Handed in from outside: core has no randomness of its own. */
export type NewId = () => string;
