import { useState } from 'react';
import { parseTag } from '../../core/custody/tag.ts';
import type { Currency } from '../../core/money/money.ts';
import { AmountField } from '../../renderer/kit/fields/AmountField.tsx';
import { FindField } from '../../renderer/kit/fields/FindField.tsx';
import { NumberField } from '../../renderer/kit/fields/NumberField.tsx';
import { TextField } from '../../renderer/kit/fields/TextField.tsx';
import { Ask } from '../../renderer/kit/keys/Ask.tsx';
import { ChoiceKeys } from '../../renderer/kit/keys/ChoiceKeys.tsx';
import { Key } from '../../renderer/kit/keys/Key.tsx';
import { Problem } from '../../renderer/kit/keys/Problem.tsx';
import { YesNo, type YesNoAnswer } from '../../renderer/kit/keys/YesNo.tsx';
import { TagText } from '../../renderer/kit/mark/TagText.tsx';
import { useScan } from '../../renderer/kit/scan/scan.ts';
import { Pane } from '../../renderer/kit/shell/Pane.tsx';
import { RoomShell } from '../../renderer/kit/shell/RoomShell.tsx';
import { SheetRow, SheetTear, WrittenSheet } from '../../renderer/kit/shell/WrittenSheet';
import { aTag } from '../builders/aTag.ts';
import { ROOMS } from './rooms.ts';
import './bench.css';

const CHANGED = [
  'moved',
  'new part',
  'never worked',
  'update',
  'storm',
  'bang, smell',
  'spill',
  'cleaned',
  'long unused',
  'slowly worse',
  'only under load, cold, at home',
];
const HITS = [
  { id: 'a', says: 'F6C 6KA 5', kind: 'machine of Judith Amberley, at Tracing' },
  { id: 'b', says: 'Judith Amberley', kind: 'owner, one machine here' },
];

const isTag = (code: string) => parseTag(code) !== undefined;

export function KeysPage() {
  const [scanned, setScanned] = useState('');
  useScan({ check: isTag }, setScanned);
  const [find, setFind] = useState('');
  const [told, setTold] = useState('Since we moved house it stays dark. The fans turn.');
  const [name, setName] = useState('Judith Amberley');
  const [phone, setPhone] = useState('07700 900 143');
  const [changed, setChanged] = useState<readonly string[]>(['moved']);
  const [limit, setLimit] = useState<number | null>(12000);
  const [volts, setVolts] = useState<number | null>(12.11);
  const [open, setOpen] = useState<YesNoAnswer>('yes');
  const [film, setFilm] = useState<YesNoAnswer>(null);
  const [asking, setAsking] = useState(new URLSearchParams(location.search).has('ask'));
  return (
    <RoomShell
      rooms={ROOMS}
      here="counter"
      open={
        <>
          <h1>Intake</h1>
          <span className="k-muted">five of six known, 1 min 40</span>
        </>
      }
      find={
        <FindField
          label="Find"
          hint="owner, tag, part, paper"
          value={find}
          onChange={setFind}
          hits={HITS}
          onChoose={() => setFind('')}
          nothing="Nothing is called that here."
        />
      }
      foot={
        <>
          <TagText tag={aTag('F6C6KA5')} />
          <TagText tag={aTag('X8D2KT7')} shop />
          <span style={{ marginLeft: 'auto' }} />
          <Key large onPress={() => setAsking(true)}>
            Show to the owner
          </Key>
          <Key large kind="filled">
            Sign, print the tag
          </Key>
        </>
      }
    >
      <div className="g-two">
        <Pane on="sheet" padded={false} label="Sheet" scrolls>
          <WrittenSheet label="Intake">
            <SheetRow label="Owner" state="known">
              <div className="k-fields">
                <TextField label="Name" labelled="heard" value={name} onChange={setName} chars={16} />
                <TextField label="Telephone" labelled="heard" value={phone} onChange={setPhone} chars={14} type="tel" />
                <span className="k-muted k-small">not known here yet</span>
              </div>
            </SheetRow>
            <SheetRow label="Told" state="known">
              <TextField label="In their words" labelled="heard" value={told} onChange={setTold} lines={1} />
            </SheetRow>
            <SheetRow label="Changed last" state="known">
              <ChoiceKeys
                label="What changed last"
                numbered
                choices={CHANGED.map((id) => ({ id, says: id }))}
                chosen={changed}
                onChoose={setChanged}
              />
            </SheetRow>
            <SheetRow label="Spending limit" state="now">
              <div className="k-fields">
                <AmountField
                  label="Limit"
                  labelled="heard"
                  currency={'GBP' as Currency}
                  minor={limit}
                  onChange={setLimit}
                />
                <span className="k-muted k-small">diagnosis fee £30, credited when repaired</span>
              </div>
            </SheetRow>
            <SheetRow label="Yes or no" state="open">
              <YesNo asks="Open it and work on it" answer={open} onAnswer={setOpen} />
              <YesNo
                asks="Film the work and show it"
                note="own signature; no answer is no"
                answer={film}
                onAnswer={setFilm}
              />
            </SheetRow>
            <SheetTear
              says="The owner can go now. The rest can follow later."
              after="Below, before the first screw: encryption, backup, seals, who collects it"
            />
          </WrittenSheet>
        </Pane>
        <Pane on="soft" line="left" label="Others">
          <div style={{ display: 'grid', gap: 18, justifyItems: 'start' }}>
            <div className="k-fields">
              <Key>Prove</Key>
              <Key kind="quiet">I did something else</Key>
              <Key kind="link">five others</Key>
              <Key shortcut="B">Back</Key>
            </div>
            <Key whyNot="This machine can't go home yet: our DIMM is in slot A2.">Hand over</Key>
            <NumberField
              label="12 V rail"
              value={volts}
              onChange={setVolts}
              unit="V"
              digits={2}
              says="11.40 to 12.60 V, the supply's design guide"
            />
            <TextField
              label="Tag"
              value="K7R 4TM ?"
              onChange={() => {}}
              wrong="The last sign does not fit: K7R 4TM ? Scan it again or read it aloud."
            />
            <Problem
              says="K2M 8QX P is in Pottery studio's A2 since 10:31."
              unchanged="Nothing was moved."
              next="Take it out there, or choose another."
            >
              <Key>Open that job</Key>
              <Key>Choose another</Key>
            </Problem>
          </div>
        </Pane>
      </div>
      <output data-scanned={scanned} className="k-heard" />
      <Ask
        open={asking}
        title="Leave the sheet?"
        onClose={() => setAsking(false)}
        keys={
          <>
            <Key onPress={() => setAsking(false)}>Stay here</Key>
            <Key onPress={() => setAsking(false)}>Leave it as a draft</Key>
          </>
        }
      >
        <p>Kept as a draft at 10:41. You can close this.</p>
      </Ask>
    </RoomShell>
  );
}
