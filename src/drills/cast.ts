import { pick, shuffled } from '../scenario/random.ts';
import type { Random } from '../scenario/variant.ts';
import type { Share } from './item.ts';
import { quietSpots } from './leads.ts';
import type { Spot } from './places.ts';
import type { Setting } from './setting.ts';
import { type Company, companiesOf, type Suspect } from './suspects.ts';

/** Who is suspected, whose fault it is, and where somebody stands. */
export interface Cast {
  readonly company: Company;
  readonly spot: Spot;
  /** The one that is at fault first, others of its company by lot after it. */
  readonly suspects: readonly Suspect[];
}

interface Role {
  readonly company: Company;
  readonly truth: Suspect;
  readonly spot: Spot;
}

/** What one number has to itself, for as long as it is drawn. */
const shares = new WeakMap<Share, readonly Role[]>();

/** A cast by lot, of at least and at most so many suspects: no other number of the house has the same fault at the same spot. */
export function castByLot(setting: Setting, random: Random, own: Share, least: number, most = least): Cast | undefined {
  const roles = shares.get(own) ?? own(rolesOf(setting));
  shares.set(own, roles);
  const role = pick(
    random,
    roles.filter(({ company }) => company.suspects.length >= least),
  );
  if (!role) return undefined;
  const { company, truth, spot } = role;
  const others = company.suspects.filter((suspect) => suspect !== truth);
  return { company, spot, suspects: [truth, ...shuffled(random, others).slice(0, most - 1)] };
}

function rolesOf(setting: Setting): Role[] {
  return companiesOf(setting).flatMap((company) =>
    company.suspects.flatMap((truth) => quietSpots(setting).map((spot): Role => ({ company, truth, spot }))),
  );
}
