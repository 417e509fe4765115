import { useEffect, useMemo, useState } from 'preact/hooks';
import type { BenchView } from '../../attempt/view.ts';
import { habit, keepHabit } from '../storage.ts';
import { t } from '../words.ts';

export function Sounds(_: { readonly view: BenchView }) {
  return null;
}
