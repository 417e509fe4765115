import { useId } from 'preact/hooks';

interface Props {
  readonly label: string;
  readonly value: string;
  readonly onValue: (value: string) => void;
  /** Not shown as it is typed, and never offered to be kept. */
  readonly secret?: boolean;
  readonly capitals?: boolean;
  readonly kind?: 'number';
}

/** A line to type in. The browser is asked to remember nothing of it. */
export function Field({ label, value, onValue, secret = false, capitals = false, kind }: Props) {
  const id = useId();
  return (
    <div class="lab-field">
      <label for={id}>{label}</label>
      <input
        id={id}
        type={secret ? 'password' : (kind ?? 'text')}
        autocomplete={secret ? 'new-password' : 'off'}
        autocapitalize={capitals ? 'characters' : 'none'}
        spellcheck={false}
        required
        maxLength={200}
        value={value}
        onInput={(event) => onValue(event.currentTarget.value)}
      />
    </div>
  );
}
