/**
 * The rules of custody written down a second time, as plainly as can be and without a line of the product: names and
 * strings in maps, every slot found by looking through all parts. Slow and obvious on purpose.
 */
export type Word = 'back' | 'keep' | 'send' | 'scrap' | 'follow';

type Row = {
  readonly kind: string;
  readonly of: string;
  readonly data: boolean;
  where: string;
  title: string;
  heldFor: string;
  own: string;
};

export type NaivePlace = { readonly is: string; readonly exactly: string };

export class NaiveShop {
  rows = new Map<string, Row>();
  /** Slot → kind, for every machine and rig: `m1 A1` → `dimm`. */
  slots = new Map<string, string>();
  owners = new Map([
    ['m1', 'o1'],
    ['m2', 'o2'],
  ]);
  machineOf = new Map([
    ['j1', 'm1'],
    ['j2', 'm2'],
  ]);
  closed = new Set<string>();
  trialsAllowed = new Map([
    ['j1', true],
    ['j2', true],
  ]);
  words = new Map<string, Word>();
  /** Slot → the part recorded for it. */
  recorded = new Map<string, string>();

  know(part: string, kind: string, of: string, where: string, own = ''): void {
    this.rows.set(part, { kind, of, data: kind === 'drive', where, title: '', heldFor: '', own });
    if (where.startsWith('slot ') && of !== 'shop') this.recorded.set(where.slice(5), part);
  }

  row(part: string): Row {
    const row = this.rows.get(part);
    if (!row) throw new Error(part);
    return row;
  }

  riders = (part: string) => [...this.rows].filter(([, row]) => row.where === `with ${part}`).map(([id]) => id);
  inSlot = (slot: string) => [...this.rows].find(([, row]) => row.where === `slot ${slot}`)?.[0];
  wholeOf(part: string): string {
    const { where } = this.row(part);
    return where.startsWith('with ') ? where.slice(5) : part;
  }

  /** May this move be made? `job` is empty for a move that belongs to no job. */
  mayMove(
    job: string,
    part: string,
    from: string,
    to: string,
    why: 'hand' | 'hand, saying why' | 'wrong-slot-put-right' | 'righting' | 'righting in silence',
    lending = false,
  ): boolean {
    const row = this.row(part);
    const ours = row.of === 'shop';
    const machine = this.machineOf.get(job) ?? '';
    if (job && this.closed.has(job)) return false;
    if (plain(from) !== plain(row.where)) return false;
    if (why === 'righting in silence') return false;
    const whole = this.row(this.wholeOf(part));
    if (plain(whole.where) === 'gone' && why !== 'righting') return false;
    if (to === row.where) return false;
    if (row.heldFor && row.heldFor !== job) return false;
    if (this.riders(part).some((rider) => this.row(rider).heldFor && this.row(rider).heldFor !== job)) return false;
    if (!ours && row.of !== this.owners.get(machine)) return false;
    if (ours) {
      const trial = whole.title.startsWith('trial ') ? whole.title.slice(6) : '';
      const lies = /^(?:tray|bench) .*\|(j\d)$/.exec(whole.where)?.[1] ?? '';
      if (trial && trial !== job) return false;
      if (lies && lies !== job && job) return false;
    }
    const source = /^slot (\w+) /.exec(whole.where)?.[1];
    const sees = job ? machine : (/^slot (m\d) /.exec(row.where)?.[1] ?? '');
    if (source && source !== 'rig' && source !== sees) return false;
    return this.mayGo(job, part, to, why, lending);
  }

  mayGo(job: string, part: string, to: string, why: string, lending: boolean): boolean {
    const row = this.row(part);
    const ours = row.of === 'shop';
    const lent = lending || row.title.startsWith('lent');
    if (to === 'with-owner' && ours && !lent) return false;
    if (!ours && !this.allowedByWord(job, part, to)) return false;
    if (to.startsWith('with ')) return this.mayJoin(part, to.slice(5));
    if (!to.startsWith('slot ')) return true;
    const slot = to.slice(5);
    const [target = ''] = slot.split(' ');
    const theirs = this.owners.has(target);
    if (theirs && (!job || target !== this.machineOf.get(job))) return false;
    if (theirs && ours && !lent && !this.trialsAllowed.get(job)) return false;
    if (this.slots.get(slot) !== row.kind) return false;
    if (this.inSlot(slot)) return false;
    const own = [...this.recorded].find(([at, id]) => id === part && at.startsWith(`${target} `))?.[0];
    return !(theirs && !ours && why === 'hand' && own !== undefined && own !== slot);
  }

  allowedByWord(job: string, part: string, to: string): boolean {
    const word = this.words.get(`${job} ${part}`) ?? 'back';
    const row = this.row(part);
    if (to.startsWith('kept')) return word === 'keep';
    if (to === 'transit' || to === 'away') return word === 'send';
    if (to.startsWith('gone')) return word === 'scrap' && (!row.data || to === 'gone|destroyed with certificate');
    return true;
  }

  mayJoin(part: string, carrier: string): boolean {
    const [a, b] = [this.row(part), this.row(carrier)];
    if (a.data || part === carrier || this.riders(part).length > 0 || b.where.startsWith('with ')) return false;
    if (a.of !== b.of || (a.kind === 'lead' && a.own !== '' && a.own !== carrier)) return false;
    const machineIn = (where: string) => /^slot (\w+) /.exec(where)?.[1];
    return (
      plain(a.where) === plain(b.where) ||
      (machineIn(a.where) !== undefined && machineIn(a.where) === machineIn(b.where))
    );
  }

  move(job: string, part: string, to: string, why: string, lending = false): void {
    const row = this.row(part);
    if (to.startsWith('with ') && row.own === '') row.own = to.slice(5);
    const theirs = /^slot m\d /.test(to);
    if (lending) row.title = `lent ${job}`;
    else if (row.of === 'shop' && theirs && !row.title.startsWith('lent')) row.title = `trial ${job}`;
    else if (!theirs && to !== 'with-owner') row.title = '';
    row.where = to;
    if (row.of !== 'shop' && to.startsWith('slot ') && why === 'wrong-slot-put-right')
      this.recordAnew(part, to.slice(5));
  }

  recordAnew(part: string, slot: string): void {
    const [target = ''] = slot.split(' ');
    for (const [at, id] of this.recorded) if (id === part && at.startsWith(`${target} `)) this.recorded.delete(at);
    this.recorded.set(slot, part);
  }

  /** What keeps the job's machine from going home, as a list of parts. */
  keepsHere(job: string): readonly string[] {
    const machine = this.machineOf.get(job) ?? '';
    return [...this.rows.keys()].filter((part) => {
      const row = this.row(part);
      const { where } = this.row(this.wholeOf(part));
      const inside = where.startsWith(`slot ${machine} `);
      if (row.of === 'shop') return row.where.startsWith(`slot ${machine} `) && !row.title.startsWith('lent');
      if (row.of !== this.owners.get(machine) || inside || where === 'with-owner') return false;
      const stays = /^(kept|transit|away|gone)/.test(where);
      if (stays && this.allowedByWord(job, part, where)) return false;
      return !(this.words.get(`${job} ${part}`) === 'follow' && where !== 'not-found' && plain(where) !== 'gone');
    });
  }
}

/** A place without what does not say where: for which job on a bench, how it went. A tray is one job's tray. */
const plain = (where: string) => (where.startsWith('tray') ? where : where.split('|')[0]);
