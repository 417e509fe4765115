import type * as Plot from '@observablehq/plot';
import type { ComponentChildren } from 'preact';
import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { t } from '../../words.ts';

/** Room for a chart, CSS pixels, and the text size in force: 1 at 100 %. */
export interface Room {
  readonly width: number;
  readonly size: number;
}

interface Props {
  readonly title: string;
  /** What it shows, in a sentence: for whoever reads it, and the chart's name for whoever hears it. */
  readonly said: string;
  /** The same function as long as the figures are the same. */
  readonly draw: (plot: typeof Plot, room: Room) => Element;
  /** The same figures as a table. */
  readonly children: ComponentChildren;
}

const NARROWEST = 260;

const textSize = (): number => Number.parseFloat(getComputedStyle(document.documentElement).fontSize) / 16 || 1;

/** A chart in the width that there is, fetched with its library when it is first shown; under it the same as a table. */
export function PlotFigure({ title, said, draw, children }: Props) {
  const host = useRef<HTMLDivElement>(null);
  const [plot, setPlot] = useState<typeof Plot | 'failed'>();
  const [room, setRoom] = useState<Room>();
  const id = useId();
  useEffect(() => {
    let current = true;
    import('@observablehq/plot').then(
      (found) => current && setPlot(found),
      () => current && setPlot('failed'),
    );
    return () => {
      current = false;
    };
  }, []);
  useEffect(() => {
    const element = host.current;
    if (element === null) return undefined;
    const observer = new ResizeObserver(([entry]) => {
      if (entry === undefined || entry.contentRect.width === 0) return;
      setRoom({ width: Math.max(NARROWEST, Math.round(entry.contentRect.width)), size: textSize() });
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  useEffect(() => {
    if (plot === undefined || plot === 'failed' || room === undefined) return;
    const chart = draw(plot, room);
    // A host's walls let no styles in but those of the style sheets; what is in these stands there.
    for (const style of chart.querySelectorAll('style')) style.remove();
    // The library's own names of its parts are English, and belong to no role.
    for (const part of chart.querySelectorAll('[aria-label]')) part.removeAttribute('aria-label');
    chart.setAttribute('role', 'img');
    chart.setAttribute('aria-label', `${title}. ${said}`);
    host.current?.replaceChildren(chart);
  }, [plot, room, draw, title, said]);
  return (
    <figure class="plot" aria-labelledby={`${id}-title`}>
      <figcaption>
        <h3 id={`${id}-title`}>{title}</h3>
        <p>{said}</p>
      </figcaption>
      <div class="plot-host" ref={host} />
      {plot === 'failed' && <p role="alert">{t('classview:charts.failed')}</p>}
      <details class="plot-table">
        <summary>{t('classview:asTable')}</summary>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what may scroll must be reached by the keyboard */}
        <section class="classview-scroll" tabIndex={0} aria-label={title}>
          {children}
        </section>
      </details>
    </figure>
  );
}
