import type { MarkLook } from '../../renderer/kit/mark/look.ts';
import { MarkLegend } from '../../renderer/kit/mark/MarkLegend.tsx';
import { PartMark } from '../../renderer/kit/mark/PartMark.tsx';
import { PartPicture, PartSwatch } from '../../renderer/kit/mark/PartSwatch.tsx';
import type { SilhouetteName } from '../../renderer/kit/mark/silhouettes.ts';
import { useHatch } from '../../renderer/kit/mark/useHatch.tsx';
import { RoomShell } from '../../renderer/kit/shell/RoomShell.tsx';
import { ROOMS } from './rooms.ts';

const OWNERS = { is: 'part', whose: 'owner', standing: 'plain', known: true } as const;
const OURS = { ...OWNERS, whose: 'shop' } as const;
const LOOKS: readonly (readonly [string, MarkLook])[] = [
  ['Owner’s', OWNERS],
  ['Ours, on trial', OURS],
  ['Suspect', { ...OWNERS, standing: 'suspect' }],
  ['Ours, suspect', { ...OURS, standing: 'suspect' }],
  ['Confirmed dead', { ...OWNERS, standing: 'dead' }],
  ['Empty slot', { is: 'empty' }],
  ['Not known yet', { is: 'unknown' }],
];
const SHAPES: readonly SilhouetteName[] = [
  'card',
  'supply',
  'board',
  'dimm',
  'processor',
  'cooler',
  'drive',
  'm2',
  'fan',
  'meter',
  'tester',
  'stick',
  'screen',
  'cord',
  'keyboard',
  'case',
  'other',
];

export function MarksPage() {
  const hatch = useHatch();
  return (
    <RoomShell rooms={ROOMS} here="kept" open={<h1>Marks</h1>}>
      <div style={{ padding: 32, display: 'grid', gap: 28 }}>
        <svg width={1200} height={150} role="img" aria-label="All marks">
          {hatch.defs}
          {LOOKS.map(([name, look], i) => (
            <g key={name} transform={`translate(${10 + i * 168} 10)`}>
              <PartMark look={look} id={name} x={0} y={0} width={132} height={84} hatch={hatch.fill} />
              <text y={120} fontSize={19} fontWeight={600}>
                {name}
              </text>
            </g>
          ))}
        </svg>
        <div style={{ display: 'flex', gap: 18 }}>
          {LOOKS.map(([name, look]) => (
            <PartSwatch key={name} look={look} id={name} />
          ))}
        </div>
        <div style={{ display: 'flex', flexWrap: 'wrap', gap: 24, alignItems: 'center' }}>
          {SHAPES.map((name) => (
            <PartPicture key={name} name={name} look={OURS} width={88} />
          ))}
          {SHAPES.slice(0, 6).map((name) => (
            <PartPicture key={name} name={name} look={{ is: 'shadow' }} width={88} />
          ))}
        </div>
        <MarkLegend />
      </div>
    </RoomShell>
  );
}
