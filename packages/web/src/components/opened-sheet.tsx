import { Popover } from '@mantine/core';
import { type ReactNode, type Ref, type RefObject, useEffect, useImperativeHandle, useState } from 'react';

interface OpenedSheetProps {
  /** The button it belongs to. */
  readonly of: RefObject<HTMLButtonElement | null>;
  /** Id of that button, which names the sheet. */
  readonly id: string;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly wide: boolean;
  readonly children: ReactNode;
}

/** What a button opens, set down below it. */
export function OpenedSheet({ of, id, isOpen, onClose, wide, children }: OpenedSheetProps) {
  // It is told of its opening after it was made, as it notes then where the focus was.
  const [isMade, setMade] = useState(false);
  useEffect(() => setMade(true), []);
  const opened = isOpen && isMade;
  return (
    <Popover
      id={id}
      opened={opened}
      onDismiss={onClose}
      position="bottom-start"
      width={wide ? 520 : 380}
      offset={4}
      trapFocus
      returnFocus
      transitionProps={{ duration: 0 }}
      classNames={{ dropdown: 'origin' }}
    >
      <Popover.Target>
        <Beside of={of} />
      </Popover.Target>
      <Popover.Dropdown tabIndex={0} data-autofocus>
        {opened ? children : null}
      </Popover.Dropdown>
    </Popover>
  );
}

/** The id of the sheet of a button, for what controls it. */
export function sheetId(id: string): string {
  return `${id}-dropdown`;
}

/** Gives a button that stands there already as the place of the sheet. */
function Beside({ of, ref }: { readonly of: RefObject<HTMLButtonElement | null>; readonly ref?: Ref<HTMLElement> }) {
  useImperativeHandle<HTMLElement | null, HTMLElement | null>(ref, () => of.current, [of]);
  return null;
}
