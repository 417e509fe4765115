import type { PlaceLook } from './place.ts';
import { furnace } from './places/furnace.ts';
import { hallway } from './places/hallway.ts';
import { mat } from './places/mat.ts';
import { outdoor } from './places/outdoor.ts';
import { panel } from './places/panel.ts';

const bare: PlaceLook = { ...hallway, captions: () => [] };

const LOOKS: Readonly<Record<string, PlaceLook>> = { hallway, mat, furnace, outdoor, panel };

export function lookOf(place: string): PlaceLook {
  return LOOKS[place] ?? bare;
}
