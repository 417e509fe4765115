import type { MeterFunction } from '../../meter/functions.ts';

/** What is printed large on a function's key: the quantity's symbol, drawn where no font is sure to have it. */
export function KeySymbol({ fn }: { readonly fn: MeterFunction }) {
  switch (fn) {
    case 'voltsAc':
      return <Sign letters="V" after={<Alternating />} />;
    case 'voltsDc':
      return <Sign letters="V" after={<Direct />} />;
    case 'voltsLoaded':
      return <Sign letters="Lo-Z" />;
    case 'ampsAc':
      return <Sign letters="A" after={<Alternating />} />;
    case 'ohms':
      return <Sign letters="Ω" />;
    case 'microampsDc':
      return <Sign letters="µA" after={<Direct />} />;
    case 'tone':
      return (
        <svg class="key-drawn" viewBox="0 0 26 16" aria-hidden="true" focusable="false">
          <circle class="filled" cx="5" cy="8" r="2.2" />
          <path d="M10 3.5 Q13 8 10 12.5 M14.5 3 Q18 8 14.5 13 M19 2.5 Q23 8 19 13.5" />
        </svg>
      );
    case 'capacitance':
      return (
        <svg class="key-drawn" viewBox="0 0 26 16" aria-hidden="true" focusable="false">
          <path d="M2 8 H10.5 M15.5 8 H24 M10.5 2 V14 M15.5 2 V14" />
        </svg>
      );
    case 'off':
      return null;
  }
}

function Sign({ letters, after }: { readonly letters: string; readonly after?: preact.JSX.Element }) {
  return (
    <b class="key-sign" aria-hidden="true">
      {letters}
      {after}
    </b>
  );
}

function Alternating() {
  return (
    <svg class="key-current" viewBox="0 0 14 10" aria-hidden="true" focusable="false">
      <path d="M1 6 Q4 0 7 5 T13 4" />
    </svg>
  );
}

function Direct() {
  return (
    <svg class="key-current" viewBox="0 0 14 10" aria-hidden="true" focusable="false">
      <path d="M1 3 H13 M1 7.5 H4 M5.5 7.5 H8.5 M10 7.5 H13" />
    </svg>
  );
}
