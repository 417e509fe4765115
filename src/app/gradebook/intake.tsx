import { useEffect, useRef, useState } from 'preact/hooks';
import { t } from '../words.ts';
import { chosenFiles, droppedFiles, opened } from './dropped.ts';
import { takeFiles } from './store.ts';

const take = (list: FileList): void => {
  void takeFiles(opened(chosenFiles([...list])));
};

/** Where files come in: chosen, or dropped anywhere on the page. */
export function Intake({ isSmall }: { readonly isSmall: boolean }) {
  const [isOver, setIsOver] = useState(false);
  useEffect(() => {
    const over = (event: DragEvent) => {
      event.preventDefault();
      setIsOver(true);
    };
    const left = (event: DragEvent) => {
      if (event.relatedTarget === null) setIsOver(false);
    };
    // Without this the browser would leave the page for the file.
    const dropped = (event: DragEvent) => {
      event.preventDefault();
      setIsOver(false);
      if (event.dataTransfer !== null) void takeFiles(droppedFiles(event.dataTransfer).then(opened));
    };
    addEventListener('dragover', over);
    addEventListener('dragleave', left);
    addEventListener('drop', dropped);
    return () => {
      removeEventListener('dragover', over);
      removeEventListener('dragleave', left);
      removeEventListener('drop', dropped);
    };
  }, []);
  return (
    <div class="book-drop" data-over={isOver || undefined} data-small={isSmall || undefined}>
      <p>{t('gradebook:take.drop')}</p>
      <div class="book-buttons">
        <label class="button file-button">
          {t('gradebook:take.files')}
          <input
            type="file"
            class="unseen"
            multiple
            accept=".json,.zip,application/json,application/zip"
            onChange={({ currentTarget }) => {
              if (currentTarget.files !== null) take(currentTarget.files);
              currentTarget.value = '';
            }}
          />
        </label>
        <FolderButton />
      </div>
    </div>
  );
}

function FolderButton() {
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => {
    input.current?.setAttribute('webkitdirectory', '');
  }, []);
  return (
    <label class="button file-button">
      {t('gradebook:take.folder')}
      <input
        ref={input}
        type="file"
        class="unseen"
        onChange={({ currentTarget }) => {
          if (currentTarget.files !== null) take(currentTarget.files);
          currentTarget.value = '';
        }}
      />
    </label>
  );
}
