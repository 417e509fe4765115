import { useMarks } from '../guided/marks.ts';
import { t } from '../words.ts';
import { type Leads, TOOLS } from './use-leads.ts';

/** What the hand does where it touches the drawn bench. */
export function Tools({ leads }: { readonly leads: Leads }) {
  const marks = useMarks();
  return (
    <section class="tools" aria-labelledby="tools-title">
      <h2 id="tools-title">{t('app:tools.title')}</h2>
      <fieldset class="tools-row" aria-labelledby="tools-title">
        {TOOLS.map((tool) => (
          <button
            key={tool}
            type="button"
            aria-pressed={leads.tool === tool}
            data-marked={marks.tool(tool)}
            onClick={() => leads.choose(tool)}
          >
            {t(`app:tools.${tool}`)}
          </button>
        ))}
      </fieldset>
      <p class="quiet">{t(`app:tools.does.${leads.tool}`)}</p>
    </section>
  );
}
