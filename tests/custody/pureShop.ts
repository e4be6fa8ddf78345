import type { Owner } from '../../core/approval/owner.ts';
import type { Asking } from '../../core/commands/kernel/asking.ts';
import type { About, Command } from '../../core/commands/kernel/command.ts';
import type { Decision } from '../../core/commands/kernel/decision.ts';
import { asItCounts } from '../../core/custody/asItCounts.ts';
import { applyPart, type Part, type PartEntry } from '../../core/custody/ledger.ts';
import { applyMachine, type Machine, type MachineEntry } from '../../core/custody/machine.ts';
import type { View } from '../../core/entries/view.ts';
import type { JobId, PartId } from '../../core/ids.ts';
import { applyJob } from '../../core/job/applyJob.ts';
import type { JobEntry } from '../../core/job/entries.ts';
import type { Job } from '../../core/job/job.ts';
import type { Shop } from '../../core/job/shop.ts';
import type { Draft } from '../../core/journal/entry.ts';
import type { Written } from '../../core/journal/written.ts';
import { noPeople } from '../../core/people/people.ts';
import { type EpochMs, epochMs } from '../../core/time.ts';

/** A shop without a database: streams folded in memory, commands asked as the service asks them. */
export class PureShop {
  readonly parts = new Map<PartId, Part>();
  readonly machines = new Map<string, Machine>();
  readonly jobs = new Map<JobId, Job>();
  readonly owners = new Map<string, Owner>();
  readonly journal: Draft[] = [];
  at: EpochMs = epochMs(1_000_000);
  readonly shop: Shop;
  readonly asking: Omit<Asking, 'at' | 'by'>;

  constructor(shop: Shop, asking: Omit<Asking, 'at' | 'by'>) {
    this.shop = shop;
    this.asking = asking;
  }

  /** Writes entries as decided, or as a test sets the scene. */
  write(...entries: readonly Draft[]): void {
    for (const draft of entries) {
      this.journal.push(structuredClone(draft));
      const [subject, id] = draft.stream.split(':') as [string, string];
      const entry = { ...draft, at: this.at, by: 'bram' };
      if (subject === 'part')
        this.#keep(
          this.parts,
          id,
          applyPart(this.parts.get(id as PartId) ?? null, entry as unknown as PartEntry & Written),
        );
      if (subject === 'machine')
        this.#keep(this.machines, id, applyMachine(this.machines.get(id) ?? null, entry as unknown as MachineEntry));
      if (subject === 'job')
        this.#keep(this.jobs, id, applyJob(this.jobs.get(id as JobId) ?? null, entry as unknown as JobEntry & Written));
    }
  }

  #keep<Id extends string, S>(map: Map<Id, S>, id: string, state: S | null): void {
    if (state) map.set(id as Id, state);
  }

  /** What a command is shown: the streams it names, as the service loads them. */
  view(about: About): View {
    const job = about.job ? (this.jobs.get(about.job) ?? null) : null;
    const machine = this.machines.get(about.machine ?? job?.machine ?? '') ?? null;
    const rigs = new Map([...this.machines].filter(([id]) => this.shop.settings?.rigs.includes(id)));
    const ids = new Set([
      ...(machine?.parts ?? []),
      ...(job?.parts ?? []),
      ...(about.parts ?? []),
      ...[...rigs.values()].flatMap((rig) => Object.values(rig.inside)),
    ]);
    const parts = new Map<PartId, Part>();
    for (const id of ids) {
      const part = this.parts.get(id);
      if (!part) continue;
      parts.set(id, asItCounts(part, this.at));
      if (part.place.at === 'with') ids.add(part.place.part);
      for (const rider of part.riders) ids.add(rider);
    }
    const owner = job ? (this.owners.get(job.owner) ?? null) : null;
    return {
      shop: this.shop,
      people: noPeople,
      job,
      elsewhere: [],
      olderJob: null,
      here: null,
      owner,
      machine,
      rigs,
      parts,
      enquiry: null,
      paperCounts: new Map(),
    };
  }

  /** Asks a command; what it decides is written. */
  ask<Input>(command: Command<string, Input>, input: Input): Decision {
    const asking = { ...this.asking, at: this.at, by: 'bram' as Asking['by'] };
    const decision = command.decide(this.view(command.about(input)), input, asking);
    if (decision.ok) this.write(...decision.entries);
    this.at = epochMs(this.at + 60_000);
    return decision;
  }
}
