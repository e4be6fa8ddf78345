import { describe, expect, it } from 'vitest';
import { parseTag } from '../../../core/custody/tag.ts';
import { jobId, machineId, ownerId } from '../../../core/ids.ts';
import { beforeAnswered, freshSheet, signerOf, type TakingInSheet } from './sheet.ts';
import { stillOpen } from './stillOpen.ts';
import { beforeInput, takeInInput } from './takeInInput.ts';

const aSheet = (over: Partial<TakingInSheet> = {}): TakingInSheet => ({
  ...freshSheet(),
  owner: { ...freshSheet().owner, name: 'Judith Amberley', phone: '07700 900 143' },
  machine: { known: null, called: 'drafting PC', serial: '' },
  ownWords: 'It stays dark.',
  symptoms: ['dark-runs'],
  limitMinor: 12_000,
  ...over,
});

describe('the taking-in sheet', () => {
  it('carries a tag that reads back from the start', () => {
    const { tag } = freshSheet();
    expect(parseTag(tag)).toBe(tag);
  });
  it('names everything that is still open, and nothing once it is known and signed', () => {
    expect(stillOpen(freshSheet(), false, {})).toEqual([
      'owner',
      'reach',
      'machine',
      'told',
      'terms',
      'limit',
      'signature',
    ]);
    expect(stillOpen(aSheet(), true, {})).toEqual([]);
  });
  it('asks no term of known work, but says why a machine came back before it can be signed', () => {
    expect(stillOpen(aSheet({ symptoms: [], tasks: [{ id: 'clean', fixedMinor: 2500 }] }), true, {})).toEqual([]);
    expect(stillOpen(aSheet({ cameBack: { from: jobId('j1'), same: null } }), true, {})).toEqual(['came-back']);
  });
  it('names what was written and cannot be so, before anything is signed', () => {
    expect(stillOpen(aSheet(), true, { phone: 'phone', promise: 'past', text: 'too-long' })).toEqual([
      'wrong-phone',
      'wrong-day',
      'wrong-text',
    ]);
  });
  it('lets the guardian sign for a minor', () => {
    const owner = { ...aSheet().owner, kind: 'minor' as const, guardian: ' Colm Amberley ' };
    expect(signerOf(owner)).toBe('Colm Amberley');
  });
});

describe('what the sheet asks the shop to write down', () => {
  it('takes unanswered as no: no used part, no lesser part, no recording', () => {
    const { substitution, recording } = takeInInput(aSheet(), 'en', 'Europe/London');
    expect(substitution).toEqual({ used: false, lesser: 'no' });
    expect(recording).toBe(false);
  });
  it('reads a deadline by the shop’s own clock', () => {
    const summer = takeInInput(aSheet({ deadline: '2026-07-16T12:00' }), 'en', 'Europe/London');
    expect(summer.deadline).toBe(Date.UTC(2026, 6, 16, 11));
  });
  it('knows a returning owner and machine by what they are, not by what was typed', () => {
    const sheet = aSheet({
      owner: { ...aSheet().owner, known: ownerId('owner-1') },
      machine: { known: machineId('machine-1'), called: 'drafting PC', serial: '' },
      cameBack: { from: jobId('job-1'), same: 'same-fault' },
    });
    const input = takeInInput(sheet, 'en', 'Europe/London');
    expect(input.owner).toEqual({ known: 'owner-1' });
    expect(input.machine).toEqual({ known: 'machine-1', tag: sheet.tag });
    expect(input.cameBack).toEqual({ from: 'job-1', same: 'same-fault' });
  });
  it('writes nothing of the second tier while nothing of it was asked, and "don’t know" where it was left open', () => {
    const { before } = aSheet();
    expect(beforeAnswered(before)).toBe(false);
    expect(beforeInput({ ...before, backup: 'old' })).toMatchObject({
      encryption: 'unknown',
      backup: 'old',
      seals: 'unknown',
    });
  });
});
