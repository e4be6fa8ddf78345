import { type Box, FAN_BOXES } from './plan.ts';

const box = (x: number, y: number, w: number, h: number) => `M${x} ${y}h${w}v${h}h${-w}Z`;
const ring = (x: number, y: number, r: number) =>
  `M${x + r} ${y}a${r} ${r} 0 1 0 ${-2 * r} 0a${r} ${r} 0 1 0 ${2 * r} 0`;

/** What is on every board and in every case and says nothing about this one: in fine line, never a target. */
export function Details({
  scale,
  board,
  fans,
  boardIn,
}: {
  readonly scale: number;
  readonly board: Box;
  readonly fans: number;
  readonly boardIn: boolean;
}) {
  const { x, y, w, h } = board;
  const holes = [14, w / 2, w - 14].flatMap((dx) =>
    [14, Math.min(230, h * 0.55), h - 14].map((dy) => ring(x + dx, y + dy, 5.5) + ring(x + dx, y + dy, 2)),
  );
  const ports = [56, 80, 106, 144, 172, 198].map((dy, i) =>
    box(32, y + dy - 12, 30, [20, 20, 34, 24, 20, 20][i] ?? 20),
  );
  const regulators =
    box(x + 44, y + 44, 22, 128) + [1, 2, 3, 4, 5, 6, 7].map((i) => `M${x + 44} ${y + 44 + i * 16}h22`).join('');
  const upper = box(x + 84, y + 10, 84, 20) + [1, 2, 3, 4, 5].map((i) => `M${x + 84 + i * 14} ${y + 10}v20`).join('');
  const chip = box(x + w - 100, y + h - 130, 58, 58) + box(x + w - 92, y + h - 122, 42, 42);
  const foot = `M${x + 246} ${y + h - 12}h66${[0, 1, 2, 3, 4, 5, 6, 7].map((i) => `M${x + 248 + i * 9} ${y + h - 16}v8`).join('')}`;
  const slabs =
    fans > 0
      ? ''
      : FAN_BOXES.slice(0, 2)
          .map(
            (fan) =>
              `${box(fan.x, fan.y, fan.w, fan.h)}M${fan.x} ${fan.y + 10}h${fan.w}M${fan.x} ${fan.y + fan.h - 10}h${fan.w}M${fan.x + fan.w / 2} ${fan.y + fan.h / 2 - 12}v24`,
          )
          .join('');
  const button = box(647, 84, 8, 18) + box(647, 110, 8, 18);
  return (
    <g transform={`scale(${scale})`} className="k-inside-details">
      <path d={slabs + button} className="k-inside-detail" />
      <path d={ring(651, 62, 5.5)} className="k-inside-detail" />
      {boardIn && (
        <>
          <path d={`${holes.join('')}${regulators}${upper}${chip}${foot}`} className="k-inside-detail" />
          <path d={box(32, y + 36, 46, 176)} className="k-inside-ports" />
          <path d={ports.join('')} className="k-inside-detail" />
          <path d={box(x + 40, y + 8, 30, 18)} className="k-inside-ports" />
          <path d={`M${x + 50} ${y + 8}v18M${x + 60} ${y + 8}v18M${x + 40} ${y + 17}h30`} className="k-inside-detail" />
        </>
      )}
    </g>
  );
}
