import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';

interface NumberProps {
  readonly label: string;
  /** What it is a number of, for those who do not see where it stands. */
  readonly of?: string;
  readonly value: number | undefined;
  readonly onValue: (value: number | undefined) => void;
  readonly from: number;
  readonly to: number;
  readonly step?: number | 'any';
  /** What holds where the field is empty. */
  readonly otherwise?: number | string;
}

/** A number with its name; empty where nothing is said. Told when the hand is done with it. */
export function NumberField({ label, of, value, onValue, from, to, step = 'any', otherwise }: NumberProps) {
  const id = useId();
  return (
    <div class="make-field make-number">
      <label for={id}>
        {label}
        {of !== undefined && <span class="unseen"> {of}</span>}
      </label>
      <input
        id={id}
        type="number"
        min={from}
        max={to}
        step={step}
        value={value ?? ''}
        placeholder={otherwise === undefined ? '' : String(otherwise)}
        onChange={(event) => {
          const { value: typed } = event.currentTarget;
          onValue(typed === '' ? undefined : Number(typed));
        }}
      />
    </div>
  );
}

interface SelectProps<Value extends string> {
  readonly label: string;
  readonly value: Value | '';
  readonly options: readonly (readonly [Value, string])[];
  readonly onValue: (value: Value) => void;
  /** Shown first, where nothing need be chosen. */
  readonly none?: string;
}

export function SelectField<Value extends string>({ label, value, options, onValue, none }: SelectProps<Value>) {
  const id = useId();
  return (
    <div class="make-field">
      <label for={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => onValue(event.currentTarget.value as Value)}>
        {none !== undefined && <option value="">{none}</option>}
        {options.map(([each, words]) => (
          <option key={each} value={each}>
            {words}
          </option>
        ))}
      </select>
    </div>
  );
}

interface TextProps {
  readonly label: string;
  readonly value: string;
  readonly onValue: (value: string) => void;
  readonly most: number;
  readonly required?: boolean;
}

export function TextField({ label, value, onValue, most, required = false }: TextProps) {
  const id = useId();
  return (
    <div class="make-field make-text">
      <label for={id}>{label}</label>
      <input
        id={id}
        value={value}
        maxLength={most}
        required={required}
        autocomplete="off"
        onChange={(event) => onValue(event.currentTarget.value)}
      />
    </div>
  );
}

interface TickProps {
  readonly checked: boolean;
  readonly onChange: (checked: boolean) => void;
  readonly disabled?: boolean;
  readonly children: ComponentChildren;
}

export function Tick({ checked, onChange, disabled = false, children }: TickProps) {
  return (
    <label class="choice">
      <input type="checkbox" checked={checked} disabled={disabled} onChange={(event) => onChange(event.currentTarget.checked)} />
      <span>{children}</span>
    </label>
  );
}

interface FileProps {
  readonly words: string;
  /** @param text undefined where the file is too large to be read */
  readonly onText: (text: string | undefined, name: string) => void;
}

/** Nothing of ours is larger, bytes. */
const MOST_BYTES = 4_000_000;

/** A button that opens a file and hands its text on. */
export function FileButton({ words, onText }: FileProps) {
  return (
    <label class="button file-button">
      {words}
      <input
        type="file"
        class="unseen"
        accept=".json,application/json"
        onChange={(event) => {
          const input = event.currentTarget;
          const file = input.files?.[0];
          if (file === undefined) return;
          const text = file.size > MOST_BYTES ? Promise.resolve(undefined) : file.text();
          void text.then((read) => {
            input.value = '';
            onText(read, file.name);
          });
        }}
      />
    </label>
  );
}

interface SlipProps {
  readonly title: string;
  readonly children: ComponentChildren;
  /** Folded away until it is asked for. */
  readonly folded?: boolean;
}

/** A part of the page under its heading. */
export function Slip({ title, children, folded = false }: SlipProps) {
  const id = useId();
  if (folded)
    return (
      <section class="slip">
        <details class="make-fold">
          <summary>
            <h2>{title}</h2>
          </summary>
          <div class="make-folded">{children}</div>
        </details>
      </section>
    );
  return (
    <section class="slip" aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {children}
    </section>
  );
}
