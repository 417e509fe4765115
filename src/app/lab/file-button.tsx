interface FileProps {
  readonly words: string;
  readonly accept: string;
  readonly onFile: (file: File | undefined) => Promise<void>;
}

/** A file of the reader's, taken once it is chosen. */
export function FileButton({ words, accept, onFile }: FileProps) {
  return (
    <label class="lab-file">
      <span>{words}</span>
      <input
        type="file"
        accept={accept}
        onChange={async (event) => {
          const input = event.currentTarget;
          await onFile(input.files?.[0]);
          input.value = '';
        }}
      />
    </label>
  );
}
