import { Menu } from 'electron';
import { shellWords } from '../words/shellWords.ts';

/** The menu: leaving, the clipboard, how big things are. Everything else is in the page. */
export function setMenu(): void {
  const says = shellWords.menu;
  Menu.setApplicationMenu(
    Menu.buildFromTemplate([
      { label: says.knowngood, submenu: [{ role: 'quit', label: says.quit }] },
      {
        label: says.edit,
        submenu: [
          { role: 'undo', label: says.undo },
          { role: 'redo', label: says.redo },
          { type: 'separator' },
          { role: 'cut', label: says.cut },
          { role: 'copy', label: says.copy },
          { role: 'paste', label: says.paste },
          { role: 'selectAll', label: says.selectAll },
        ],
      },
      {
        label: says.view,
        submenu: [
          { role: 'zoomIn', label: says.bigger },
          { role: 'zoomOut', label: says.smaller },
          { role: 'resetZoom', label: says.usualSize },
          { type: 'separator' },
          { role: 'togglefullscreen', label: says.wholeScreen },
        ],
      },
    ]),
  );
}
