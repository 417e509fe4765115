/**
 * An attempt worked by hand on the ticket of the cooling relay that never closes. What each step was worth is argued here from the
 * circuit alone, and then compared.
 */
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/score/judge.ts';
import { followAttempt } from '../../src/suspects/follow.ts';
import { start, take } from '../scenario/shipped.ts';
import { black, meter, open, operate, pull, red, walk } from '../score/solutions.ts';

const attempt = start('fanButNoCooling');
take(
  attempt,
  walk('furnace'),
  open('blowerDoor'),
  operate('doorSwitch', 'plunger', 'held'),
  meter('voltsAc'),
  black('board.C'),
  red('board.R'),
  red('board.Y'),
  red('board.R'),
  walk('hallway'),
  pull('thermostat'),
  red('subbase.R'),
  black('subbase.Y'),
);
const steps = judge(attempt, followAttempt(attempt));
const ruledOut = (step: number) => steps[step - 1]!.ruledOut.map(({ target, mode }) => `${target}:${mode}`);

describe('the complaint: the blower runs on a cooling call and the outdoor unit does not', () => {
  it('1, to the furnace, tells something: W and Y swapped would light the furnace on a cooling call, and no inducer runs', () => {
    expect(steps[0]).toMatchObject({ kind: 'informative' });
    expect(ruledOut(1).sort()).toEqual(['statW:swappedFrom:statY', 'statW:swappedTo:statY']);
  });

  it('2 and 3, the door off and its switch held in, tell nothing, for whoever is guilty the board dies and comes back; but without them no terminal is within reach', () => {
    expect(steps.slice(1, 3)).toMatchObject([
      { kind: 'setUp', gainBits: 0 },
      { kind: 'setUp', gainBits: 0 },
    ]);
  });

  it('4 and 5, the key and the black lead, are needed for the readings that follow', () => {
    expect(steps.slice(3, 5)).toMatchObject([{ kind: 'setUp' }, { kind: 'setUp' }]);
  });

  it('6, R to C, is certain: the blower runs, so the board has its 24 V; but it proves the meter on a known source', () => {
    expect(steps[5]).toMatchObject({ kind: 'required', gainBits: 0 });
    expect(attempt.steps[5]!.view.reading!.value).toBeGreaterThan(24);
  });

  it('7, Y to C dead, halves the house: all that lies beyond Y at the board would leave Y live, so the whole outdoor side is out', () => {
    expect(steps[6]).toMatchObject({ kind: 'informative' });
    expect(ruledOut(7)).toEqual(
      expect.arrayContaining(['contactor:coilOpen', 'spliceY:open', 'outC:open', 'disconnect:leftOut', 'capacitor:fanSectionOpen']),
    );
    // What can keep Y dead at the board: the thermostat's contact, its pin, and the conductor between.
    const followed = followAttempt(attempt);
    const left = new Set(followed.leftBefore[7]!.flatMap((alive, twin) => (alive ? [followed.field.twins[twin]!.hypothesis] : [])));
    expect(
      [...left].map((each) => `${followed.field.hypotheses[each]!.target}:${followed.field.hypotheses[each]!.mode}`).sort(),
    ).toEqual(['pinY:pinBent', 'statY:looseFrom', 'statY:looseTo', 'statY:open', 'thermostat:coolRelayStuckOpen']);
  });

  it('8, R to C once more, is wasted: nothing has happened to R, and the meter was proved; only a furnace that lights, and step 1 heard none, would have stirred meanwhile', () => {
    expect(steps[7]).toMatchObject({ kind: 'wasted', gainBits: 0, because: [1] });
  });

  it('9, 10 and 11, to the wall, the thermostat off, red on R, are needed for the last reading', () => {
    expect(steps.slice(8, 11)).toMatchObject([{ kind: 'setUp' }, { kind: 'setUp' }, { kind: 'setUp' }]);
  });

  it('12, R to Y at the sub-base: through a whole conductor and the coil Y hangs on C, so the full supply stands across; an open conductor has only its neighbours', () => {
    expect(steps[11]).toMatchObject({ kind: 'informative', left: 2 });
    expect(attempt.steps[11]!.view.reading!.value).toBeGreaterThan(24);
    expect(ruledOut(12).sort()).toEqual(['statY:looseFrom', 'statY:looseTo', 'statY:open']);
    // And what an open conductor would have shown: some volts, well below the supply.
    for (const { would } of steps[11]!.ruledOut.filter((each) => each.mode === 'open')) {
      expect(would.kind === 'reading' && would.reading!.value).toBeGreaterThan(5);
      expect(would.kind === 'reading' && would.reading!.value).toBeLessThan(22);
    }
  });
});
