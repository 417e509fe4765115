import { useEffect, useState } from 'preact/hooks';
import { t } from '../words.ts';
import { canHash, isPin } from './pin.ts';
import { choose, profileNow } from './profile-now.ts';
import { addProfile, MOST_NAME, opens, type Profile, profiles, renameProfile, setPin } from './profiles.ts';
import { RemoveProfile } from './remove-profile.tsx';

const nameOf = (profile: Profile): string => (profile.name === '' ? t('keeping:profiles.own') : profile.name);

/** A PIN typed in, and what to do with it. */
function PinForm({ words, onPin }: { readonly words: string; readonly onPin: (pin: string) => void }) {
  const [pin, setTyped] = useState('');
  return (
    <form
      class="progress-buttons"
      onSubmit={(event) => {
        event.preventDefault();
        onPin(pin);
        setTyped('');
      }}
    >
      <label class="choice">
        <span>{t('keeping:profiles.pin')}</span>
        <input
          type="password"
          inputMode="numeric"
          autocomplete="off"
          maxLength={8}
          value={pin}
          onInput={(event) => setTyped(event.currentTarget.value)}
        />
      </label>
      <button type="submit" class="button">
        {words}
      </button>
    </form>
  );
}

interface NameFormProps {
  readonly label: string;
  readonly words: string;
  readonly before?: string;
  readonly onName: (name: string) => void;
}

/** A name typed in, and what to do with it. */
function NameForm({ label, words, before = '', onName }: NameFormProps) {
  const [name, setName] = useState(before);
  return (
    <form
      class="progress-buttons"
      onSubmit={(event) => {
        event.preventDefault();
        const trimmed = name.trim();
        if (trimmed === '' || trimmed === before) return;
        setName(before === '' ? '' : trimmed);
        onName(trimmed);
      }}
    >
      <label class="choice">
        <span>{label}</span>
        <input maxLength={MOST_NAME} value={name} onInput={(event) => setName(event.currentTarget.value)} />
      </label>
      <button type="submit" class="button">
        {words}
      </button>
    </form>
  );
}

/** Goes to work for a profile: the page is loaded anew, so that nothing of the last one stays in it. */
function goTo(profile: Profile): void {
  choose(profile);
  location.reload();
}

/** In place of every page while the profile at work has a PIN that was not given in this tab. */
export function PinGate() {
  return (
    <main class="sheet progress">
      <h1 tabIndex={-1}>{t('keeping:profiles.title')}</h1>
      <ProfilesSection locked />
    </main>
  );
}

/** Who works on this PC, and the PIN of the one at work. */
export function ProfilesSection({ locked = false }: { readonly locked?: boolean }) {
  const [list, setList] = useState<readonly Profile[]>([]);
  const [asked, setAsked] = useState<Profile>();
  const [removing, setRemoving] = useState<Profile>();
  const [said, setSaid] = useState('');
  const load = () => profiles().then(setList, () => setSaid(t('keeping:denied')));
  useEffect(() => void load(), []);
  const now = list.find((each) => each.id === profileNow());
  const others = locked ? list : list.filter((each) => each !== now);
  const keepPin = (pin: string | undefined) => {
    if (now === undefined) return;
    if (pin !== undefined && !isPin(pin)) {
      setSaid(t('keeping:profiles.badPin'));
      return;
    }
    setPin(now, pin)
      .then(load)
      .then(
        () => setSaid(t(pin === undefined ? 'keeping:profiles.pinGone' : 'keeping:profiles.pinSet')),
        () => setSaid(t('keeping:denied')),
      );
  };
  const keepName = (name: string, keep: () => Promise<void>, done: string) => {
    if (list.some((each) => each.name === name)) {
      setSaid(t('keeping:profiles.taken', { name }));
      return;
    }
    keep()
      .then(load)
      .then(
        () => setSaid(done),
        () => setSaid(t('keeping:denied')),
      );
  };
  return (
    <section class="slip" aria-labelledby="profiles-title">
      <h2 id="profiles-title">{t('keeping:profiles.title')}</h2>
      <p>{t('keeping:profiles.text')}</p>
      {!locked && now !== undefined && (
        <p>
          <b>{nameOf(now)}</b>, {t('keeping:profiles.now')}
        </p>
      )}
      <div class="progress-buttons">
        {others.map((each) => (
          <button key={each.id} type="button" class="button" onClick={() => (each.pin === undefined ? goTo(each) : setAsked(each))}>
            {t('keeping:profiles.use', { name: nameOf(each) })}
          </button>
        ))}
      </div>
      {asked !== undefined && (
        <>
          <p>{t('keeping:profiles.locked', { name: nameOf(asked) })}</p>
          <PinForm
            words={t('keeping:profiles.open')}
            onPin={(pin) => void opens(asked, pin).then((right) => (right ? goTo(asked) : setSaid(t('keeping:profiles.wrongPin'))))}
          />
          <p>
            <button type="button" class="button" onClick={() => setRemoving(asked)}>
              {t('keeping:profiles.forgot')}
            </button>
          </p>
        </>
      )}
      {!locked && now !== undefined && (
        <>
          {!canHash() && <p>{t('keeping:profiles.noPin')}</p>}
          {canHash() && now.pin === undefined && <PinForm words={t('keeping:profiles.setPin')} onPin={keepPin} />}
          {now.pin !== undefined && (
            <p>
              <button type="button" class="button" onClick={() => keepPin(undefined)}>
                {t('keeping:profiles.dropPin')}
              </button>
            </p>
          )}
          <NameForm
            key={`${now.id} ${now.name}`}
            label={t('keeping:profiles.ownName')}
            words={t('keeping:profiles.rename')}
            before={now.name}
            onName={(name) => keepName(name, () => renameProfile(now.id, name), t('keeping:profiles.renamed', { name }))}
          />
          <NameForm
            label={t('keeping:profiles.name')}
            words={t('keeping:profiles.add')}
            onName={(name) => keepName(name, () => addProfile(name), t('keeping:profiles.added', { name }))}
          />
          <p>
            <button type="button" class="button" onClick={() => setRemoving(now)}>
              {t('keeping:profiles.remove')}
            </button>
          </p>
        </>
      )}
      {removing !== undefined && (
        <RemoveProfile
          key={removing.id}
          profile={removing}
          name={nameOf(removing)}
          onKeep={() => {
            setRemoving(undefined);
            setSaid(t('keeping:remove.kept', { name: nameOf(removing) }));
          }}
        />
      )}
      <p role="status" data-testid="profiles-said">
        {said}
      </p>
    </section>
  );
}
