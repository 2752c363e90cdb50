import { Popover } from '@mantine/core';
import { useDisclosure } from '@mantine/hooks';
import type { ReactNode } from 'react';

interface OpensProps {
  /** What stands on the page and opens. */
  readonly children: ReactNode;
  /** Title of what opens. */
  readonly title: string;
  readonly content: ReactNode;
  readonly wide?: boolean;
}

/** Something on the page that opens to how it came about. Escape or a press elsewhere closes it; focus returns to it. */
export function Opens({ children, title, content, wide = false }: OpensProps) {
  const [opened, { toggle, close }] = useDisclosure(false);
  return (
    <Popover
      opened={opened}
      onDismiss={close}
      position="bottom-start"
      width={wide ? 520 : 380}
      offset={4}
      trapFocus
      returnFocus
      transitionProps={{ duration: 0 }}
      classNames={{ dropdown: 'origin' }}
    >
      <Popover.Target>
        <button type="button" className="opens" onClick={toggle}>
          <span>{children}</span>
        </button>
      </Popover.Target>
      <Popover.Dropdown tabIndex={0} data-autofocus>
        {opened ? (
          <>
            <h3>{title}</h3>
            {content}
          </>
        ) : null}
      </Popover.Dropdown>
    </Popover>
  );
}
