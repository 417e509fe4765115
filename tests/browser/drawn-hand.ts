/**
 * Plays a drawn bench with the mouse. A shadow attempt beside the page says where things stand: the stage's own layout of the
 * shadow's view gives the spots to press. The page must come to the same, so it is compared after every press.
 */
import type { Page } from 'playwright-core';
import { placeName, t, thingName } from '../../src/app/words.ts';
import type { Action, ActionOf } from '../../src/attempt/actions.ts';
import { type Attempt, viewOf } from '../../src/attempt/attempt.ts';
import { type Scene, sceneOf } from '../../src/stage/layout.ts';
import { opening } from '../../src/stage/sight.ts';
import { leadAt, regionsOf } from '../../src/stage/targets.ts';
import { evidenceLabel, expectSteps, namingOfAction, takeStep } from './shadow.ts';

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Presses a spot of the scene with the mouse. */
async function pressAt(page: Page, spot: Spot): Promise<void> {
  const box = await page.locator('.drawn-host').boundingBox();
  if (box === null) throw new Error('no drawn bench');
  const sight = opening(box.width, box.height);
  await page.mouse.click(box.x + (spot.x - sight.left) * sight.unit, box.y + (spot.y - sight.top) * sight.unit);
}

function same(a: Action, b: Action): boolean {
  return JSON.stringify(Object.entries(a).sort()) === JSON.stringify(Object.entries(b).sort());
}

const middle = (box: { x: number; y: number; width: number; height: number }): Spot => ({
  x: box.x + box.width / 2,
  y: box.y + box.height / 2,
});

/** Where on the scene an action is done by hand. */
function spotFor(attempt: Attempt, action: Action): Spot | undefined {
  const view = viewOf(attempt);
  const region = regionsOf(sceneOf(view), view).find((each) => same(each.action, action));
  return region && middle(region.box);
}

async function useTool(page: Page, tool: 'hand' | 'lift' | 'look'): Promise<void> {
  await page.getByRole('button', { name: t(`app:tools.${tool}`), exact: true }).click();
}

function endSpot(scene: Scene, action: ActionOf<'lift'> | ActionOf<'land'>): Spot {
  const end = scene.ends.find((each) => each.wire === action.wire && each.end === action.end);
  if (end === undefined) throw new Error(`no end ${action.wire}@${action.end} in sight`);
  return end;
}

/** Does one action on the page with the mouse, the same on the shadow, and holds the page's count of steps to it. */
export async function byMouse(page: Page, shadow: Attempt, action: Action): Promise<void> {
  const scene = sceneOf(viewOf(shadow));
  switch (action.name) {
    case 'walk':
      await page
        .getByRole('navigation', { name: t('app:house.walk') })
        .getByRole('button', { name: placeName(action.to), exact: true })
        .click();
      break;
    case 'meter':
      await page
        .getByRole('group', { name: t('meter:keys') })
        .getByRole('button', { name: t(`meter:key.${action.fn}`), exact: true })
        .click();
      break;
    case 'probe': {
      const spot = scene.terminals.get(action.at ?? '') ?? scene.ends.find((end) => end.lifted && end.point === action.at);
      if (spot === undefined) throw new Error(`no ${action.at} in sight`);
      // The lead itself is taken up from where it lies or sticks, and set down on the terminal.
      const { tip, way } = leadAt(scene, viewOf(shadow), action.lead);
      await pressAt(page, { x: tip.x + way.x * 40, y: tip.y + way.y * 40 });
      await pressAt(page, spot);
      break;
    }
    case 'lift':
    case 'land':
      await useTool(page, 'lift');
      await pressAt(page, endSpot(scene, action));
      await useTool(page, 'hand');
      break;
    case 'look': {
      await useTool(page, 'look');
      const placed = scene.parts.find((each) => each.part.id === action.part);
      if (placed === undefined) throw new Error(`no ${action.part} in sight`);
      await pressAt(page, middle({ x: placed.x, y: placed.y, width: placed.shape.width, height: placed.shape.height }));
      await useTool(page, 'hand');
      break;
    }
    case 'wait':
      await page
        .getByRole('button', { name: t(action.seconds === 300 ? 'app:strip.wait300' : 'app:strip.wait15'), exact: true })
        .click();
      break;
    case 'replace':
      await page.getByLabel(t('app:prove.which')).selectOption({ label: thingName(action.target) });
      await page.getByRole('button', { name: t('app:prove.replace'), exact: true }).click();
      break;
    case 'name':
      await nameByMouse(page, shadow, action);
      break;
    case 'close':
      await page.getByRole('button', { name: t('app:head.close'), exact: true }).click();
      break;
    default: {
      const spot = spotFor(shadow, action);
      if (spot === undefined) throw new Error(`nothing in the scene does ${JSON.stringify(action)}`);
      await pressAt(page, spot);
    }
  }
  takeStep(shadow, action);
  if (action.name !== 'close') await expectSteps(page, shadow);
}

async function nameByMouse(page: Page, shadow: Attempt, action: ActionOf<'name'>): Promise<void> {
  const words = namingOfAction(shadow, action);
  await page.getByRole('button', { name: t('app:head.name'), exact: true }).click();
  const window = page.getByRole('dialog');
  await window.getByRole('radio', { name: words.section, exact: true }).click();
  await window.getByLabel(t('app:naming.target'), { exact: true }).selectOption({ label: words.target });
  await window.getByRole('radio', { name: words.mode, exact: true }).click();
  for (const number of action.evidence) await window.getByRole('checkbox', { name: evidenceLabel(shadow, number) }).click();
  await window.getByRole('button', { name: words.confirm, exact: true }).click();
}
