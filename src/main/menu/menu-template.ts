import type { MenuItemConstructorOptions as Item } from 'electron';
import type { MenuAction, RecentFile } from '../../shared/ipc/contract.ts';
import type { MenuCommands, MenuState } from './menu-state.ts';

/** A single `&` in a label would vanish and underline the next letter. */
const literally = (text: string): string => text.replaceAll('&', '&&');

/** Longer steps ("Undo import 214 dimensions …") would stretch the menu across the screen. */
const LONGEST_STEP = 60;
const shortened = (text: string): string =>
  text.length > LONGEST_STEP ? `${text.slice(0, LONGEST_STEP - 1).trimEnd()}…` : text;

const line: Item = { type: 'separator' };

/**
 * The menu bar as plain data: labels in Title Case, "…" where a dialog follows, unavailable items disabled and never
 * hidden. Pure, so that every state of it can be tested without a window.
 */
export function menuTemplate(state: MenuState, commands: MenuCommands): Item[] {
  const mac = state.platform === 'darwin';
  const menus = [
    fileMenu(state, commands),
    editMenu(state, commands),
    partMenu(state, commands),
    viewMenu(state, commands),
    windowMenu(state, commands),
    helpMenu(state, commands),
  ];
  return mac ? [macMenu(state, commands), ...menus] : menus;
}

/** An item that the window in front carries out. */
const action = (
  commands: MenuCommands,
  id: MenuAction,
  label: string,
  enabled: boolean,
  accelerator?: string,
): Item => ({
  id,
  label,
  enabled,
  click: () => commands.send(id),
  ...(accelerator === undefined ? {} : { accelerator }),
});

const settingsItem = (state: MenuState, commands: MenuCommands): Item =>
  action(commands, 'settings', 'Build Settings…', state.front?.hasBuild === true, 'CmdOrCtrl+,');

function macMenu(state: MenuState, commands: MenuCommands): Item {
  return {
    label: 'Waywright',
    submenu: [
      { id: 'about', label: 'About Waywright', click: () => commands.about() },
      line,
      settingsItem(state, commands),
      line,
      { role: 'services' },
      line,
      { role: 'hide' },
      { role: 'hideOthers' },
      { role: 'unhide' },
      line,
      { role: 'quit' },
    ],
  };
}

function recentLabel(file: RecentFile, homeFolder: string): string {
  // Paths of either kind: a list may have been written on another system.
  const cut = Math.max(file.path.lastIndexOf('/'), file.path.lastIndexOf('\\'));
  const folder = file.path.slice(0, Math.max(cut, 0));
  const shown = homeFolder !== '' && folder.startsWith(homeFolder) ? `~${folder.slice(homeFolder.length)}` : folder;
  const name = `${file.path.slice(cut + 1)} (${shown === '' ? '/' : shown})`;
  return literally(file.missing ? `${name}: not found` : name);
}

function fileMenu(state: MenuState, commands: MenuCommands): Item {
  const hasBuild = state.front?.hasBuild === true;
  const hasFile = state.front?.hasFile === true;
  const editable = hasBuild && state.front?.readOnly === false;
  const recent: Item[] = [
    ...state.recent.map((file) => ({
      label: recentLabel(file, state.homeFolder),
      click: () => commands.openRecent(file.path),
    })),
    ...(state.recent.length === 0 ? [{ label: 'No Recent Builds', enabled: false }] : []),
    line,
    { id: 'clear-recent', label: 'Clear Menu', enabled: state.recent.length > 0, click: () => commands.clearRecent() },
  ];
  const example: Item[] = [
    {
      id: 'example-as-first-drawn',
      label: 'As First Drawn',
      click: () => commands.openExample('as-first-drawn'),
    },
    { id: 'example-as-corrected', label: 'As Corrected', click: () => commands.openExample('as-corrected') },
    line,
    { id: 'reset-example', label: 'Reset Example…', click: () => commands.resetExample() },
  ];
  return {
    label: '&File',
    submenu: [
      { id: 'new', label: 'New Build…', accelerator: 'CmdOrCtrl+N', click: () => commands.newBuild() },
      { id: 'open', label: 'Open…', accelerator: 'CmdOrCtrl+O', click: () => commands.open() },
      { id: 'recent', label: 'Open Recent', submenu: recent },
      { id: 'example', label: 'Open Example', submenu: example },
      line,
      action(commands, 'issue-make', 'Make Drawing Issue…', editable, 'CmdOrCtrl+S'),
      {
        id: 'save-copy',
        label: 'Save a Copy…',
        accelerator: 'CmdOrCtrl+Shift+S',
        enabled: hasFile,
        click: () => commands.saveCopy(),
      },
      line,
      {
        id: 'import',
        label: 'Import',
        submenu: [
          action(commands, 'import-csv', 'Dimensions from CSV…', editable),
          action(commands, 'import-solid', 'Solid from STEP, STL, OBJ or 3MF…', editable),
          action(commands, 'import-json', 'Build from JSON…', editable),
        ],
      },
      {
        id: 'export',
        label: 'Export',
        submenu: [
          action(commands, 'export-csv', 'Dimensions as CSV…', hasBuild),
          action(commands, 'export-json', 'Build as JSON…', hasBuild),
          action(commands, 'export-stl', 'Solid of the Part as STL…', hasBuild),
          action(commands, 'export-3mf', 'Solid of the Part as 3MF…', hasBuild),
        ],
      },
      line,
      { id: 'show-in-folder', label: 'Show in Folder', enabled: hasFile, click: () => commands.showInFolder() },
      line,
      { role: 'close', label: 'Close Window', accelerator: 'CmdOrCtrl+W' },
      ...(state.platform === 'darwin' ? [] : [{ role: 'quit', label: 'Quit', accelerator: 'CmdOrCtrl+Q' } as const]),
    ],
  };
}

function editMenu(state: MenuState, commands: MenuCommands): Item {
  const front = state.front;
  const editable = front?.hasBuild === true && !front.readOnly;
  const step = (word: 'Undo' | 'Redo', label: string | undefined): Pick<Item, 'label' | 'enabled'> => {
    if (front?.editingText === true) return { label: `${word} Typing`, enabled: true };
    if (!editable || label === undefined) return { label: word, enabled: false };
    return { label: literally(`${word} ${shortened(label)}`), enabled: true };
  };
  const redo = step('Redo', front?.redo);
  const mac = state.platform === 'darwin';
  return {
    label: '&Edit',
    submenu: [
      { id: 'undo', ...step('Undo', front?.undo), accelerator: 'CmdOrCtrl+Z', click: () => commands.undo() },
      {
        id: 'redo',
        ...redo,
        accelerator: mac ? 'Shift+Cmd+Z' : 'Ctrl+Y',
        click: () => commands.redo(),
      },
      // The second key for the same step; an item can carry one only.
      ...(mac
        ? []
        : [
            {
              id: 'redo-second-key',
              ...redo,
              accelerator: 'Ctrl+Shift+Z',
              visible: false,
              click: () => commands.redo(),
            },
          ]),
      line,
      { role: 'cut' },
      { role: 'copy' },
      { role: 'paste' },
      { role: 'selectAll', label: 'Select All' },
      line,
      action(commands, 'find', 'Find…', front?.hasBuild === true, 'CmdOrCtrl+F'),
      action(commands, 'materials', 'Materials…', front?.hasBuild === true),
      ...(mac ? [] : [line, settingsItem(state, commands)]),
    ],
  };
}

function partMenu(state: MenuState, commands: MenuCommands): Item {
  const editable = state.front?.hasBuild === true && !state.front.readOnly;
  return {
    label: '&Part',
    submenu: [
      action(commands, 'part-new', 'New Part', editable, 'CmdOrCtrl+Shift+P'),
      action(commands, 'station-new', 'New Station', editable, 'CmdOrCtrl+Shift+T'),
      action(commands, 'dimension-new', 'New Dimension', editable, 'CmdOrCtrl+Shift+D'),
    ],
  };
}

function viewMenu(state: MenuState, commands: MenuCommands): Item {
  const hasBuild = state.front?.hasBuild === true;
  const theme = (value: MenuState['theme'], label: string): Item => ({
    id: `theme-${value}`,
    label,
    type: 'radio',
    checked: state.theme === value,
    click: () => commands.setTheme(value),
  });
  return {
    label: '&View',
    submenu: [
      action(commands, 'show-works', 'Works', hasBuild, 'CmdOrCtrl+1'),
      action(commands, 'show-drawing', 'Drawing Office', hasBuild, 'CmdOrCtrl+2'),
      // 3 and 4 are kept for the Pattern Shop and the Foundry, which stand before it.
      action(commands, 'show-machining', 'Machine Shop', hasBuild, 'CmdOrCtrl+5'),
      action(commands, 'next-pane', 'Next Pane', hasBuild, 'F6'),
      line,
      {
        label: 'Appearance',
        submenu: [theme('system', 'Follow the System'), theme('light', 'Light'), theme('dark', 'Dark')],
      },
      line,
      { role: 'resetZoom', label: 'Actual Size' },
      { role: 'zoomIn', label: 'Zoom In' },
      { role: 'zoomOut', label: 'Zoom Out' },
      line,
      { role: 'togglefullscreen', label: 'Full Screen' },
      ...(state.developer ? [line, { role: 'toggleDevTools', label: 'Developer Tools' } as const] : []),
    ],
  };
}

function windowMenu(state: MenuState, commands: MenuCommands): Item {
  const mac = state.platform === 'darwin';
  return {
    label: '&Window',
    submenu: [
      { role: 'minimize', label: 'Minimize' },
      ...(mac ? [{ role: 'zoom' } as const, { role: 'front' } as const] : []),
      ...(state.windows.length === 0 ? [] : [line]),
      ...state.windows.map(
        (window): Item => ({
          label: literally(window.title),
          type: 'checkbox',
          checked: window.front,
          click: () => commands.showWindow(window.id),
        }),
      ),
    ],
  };
}

function helpMenu(state: MenuState, commands: MenuCommands): Item {
  return {
    label: '&Help',
    role: 'help',
    submenu: [
      action(commands, 'keys', 'Keys…', state.front !== undefined, 'F1'),
      ...(state.platform === 'darwin'
        ? []
        : [line, { id: 'about', label: 'About Waywright', click: () => commands.about() }]),
    ],
  };
}
