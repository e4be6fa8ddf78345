import { drawingSVG, qrcode } from 'bwip-js/browser';
import './Paper.css';

/** A QR code (ISO/IEC 18004) of a tag or number; the text always stands beside it, for fingers and for reading aloud. */
export function QrCode({
  text,
  label,
  size = 72,
}: {
  readonly text: string;
  readonly label: string;
  readonly size?: number;
}) {
  const options = { bcid: 'qrcode', text, eclevel: 'M', scale: 1 };
  const drawn: string = qrcode(options, drawingSVG());
  return (
    <img
      className="k-qr"
      width={size}
      height={size}
      alt={label}
      src={`data:image/svg+xml,${encodeURIComponent(drawn)}`}
    />
  );
}
