import { describe, expect, it } from 'vitest';
import { reportOf } from '../../src/score/report.ts';
import { start, take } from '../scenario/shipped.ts';
import { black, close, closeTicket, meter, open, operate, pull, red, replace, SOLUTIONS, walk } from './solutions.ts';

function reportAfter(id: string, change: Partial<(typeof SOLUTIONS)[string]> = {}, evidence: readonly number[] = []) {
  const solution = { ...SOLUTIONS[id]!, ...change };
  const attempt = start(id);
  take(attempt, ...solution.search, { name: 'name', ...solution.name, evidence: [...evidence] }, ...solution.after);
  return { attempt, report: reportOf(attempt) };
}

describe('the service report', () => {
  it.each(Object.keys(SOLUTIONS))('%s: a good technician leaves all proved, shut and switched on', (id) => {
    const { report } = reportAfter(id);
    expect(report.named).toEqual({ section: expect.any(String), ...SOLUTIONS[id]!.name });
    expect(report.replaced).toEqual(SOLUTIONS[id]!.after.flatMap((each) => (each.name === 'replace' ? [each.target] : [])));
    expect(report.proof.proved).toBe(true);
    expect(report.proof.witnessed.length).toBeGreaterThan(0);
    expect(report.proof.call.some((each) => each.control === 'mode' && each.value !== 'off')).toBe(true);
    expect(report.power.every((each) => each.on !== undefined && each.on > each.off)).toBe(true);
    expect(report.covers.every((each) => each.closed)).toBe(true);
    expect(Object.values(report.back)).not.toContain(false);
  });

  it('tells what was named, though it is wrong, and nothing of what is true', () => {
    const { attempt, report } = reportAfter('fanButNoCooling', { name: { target: 'outY', mode: 'open' }, after: [closeTicket] });
    expect(report.named).toMatchObject({ target: 'outY', mode: 'open', section: 'cable' });
    expect(report.proof).toMatchObject({ proved: false, witnessed: [] });
    for (const fault of attempt.job.faults) expect(JSON.stringify(report)).not.toContain(fault.mode);
    expect(JSON.stringify(report)).not.toMatch(/total|points/);
  });

  it('a reading of evidence comes with the leads, the function, and the thermostat as it stood then', () => {
    const steps = [pull('thermostat'), red('subbase.R'), black('subbase.C'), meter('voltsAc')];
    const search = [...steps, operate('thermostat', 'mode', 'off')];
    const { report } = reportAfter('fanButNoCooling', { search, after: [closeTicket] }, [5, 4, 4]);
    expect(report.evidence.map((each) => each.step.number)).toEqual([4, 5]);
    expect(report.evidence[0]).toMatchObject({
      step: { red: 'subbase.R', black: 'subbase.C', fn: 'voltsAc', reading: { kind: 'number', unit: 'V~' } },
      body: 'pulled',
    });
    const modes = report.evidence.map((each) => each.settings.find(({ control }) => control === 'mode')?.value);
    expect(modes).toEqual(['cool', 'off']);
  });

  it('says what was left behind: a cover open, a switch off, a safety held in, a thermostat off its base', () => {
    const { report } = reportAfter('fanButNoCooling', {
      search: [pull('thermostat'), walk('furnace'), open('blowerDoor'), operate('doorSwitch', 'plunger', 'held')],
      after: [operate('furnaceSwitch', 'lever', 'off'), closeTicket],
    });
    expect(report.covers).toEqual([{ cover: 'blowerDoor', closed: false }]);
    expect(report.power).toEqual([{ part: 'furnaceSwitch', off: expect.any(Number), on: undefined }]);
    expect(report.back).toEqual({ jumpers: undefined, bypasses: false, apart: false });
  });

  it('a cover shut and a switch turned on again count as put back, each turn of the switch by itself', () => {
    const twice = ['off', 'on', 'off', 'on'].map((position) => operate('furnaceSwitch', 'lever', position));
    const search = [walk('furnace'), ...twice, open('burnerDoor'), close('burnerDoor')];
    const { report } = reportAfter('fanButNoCooling', { search, after: [replace('floatSwitch'), closeTicket] });
    expect(report.power).toHaveLength(2);
    expect(report.covers).toEqual([{ cover: 'burnerDoor', closed: true }]);
    expect(report.replaced).toEqual(['floatSwitch']);
    expect(report.back).toEqual({ jumpers: undefined, bypasses: undefined, apart: undefined });
  });
});
