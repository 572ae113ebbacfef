import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { pageHtml } from '../../src/report/svg/page.tsx';
import { PALETTES } from '../../src/report/svg/page-style.ts';
import { madePage } from './made-page.ts';
import { type Pixels, pngPixels } from './png-pixels.ts';

const browser = [process.env.CHROMIUM, '/usr/bin/chromium'].find(
  (path) => path && existsSync(path),
);
if (!browser) {
  console.warn('The page was not seen in a browser: no Chromium. Set CHROMIUM to its path.');
}

describe.skipIf(!browser)(
  'the exported page in a real browser',
  () => {
    const folder = mkdtempSync(join(tmpdir(), 'holdfast-page-'));
    const page = join(folder, 'page.html');
    beforeAll(() => writeFileSync(page, pageHtml(madePage())));
    afterAll(() => rmSync(folder, { recursive: true, force: true }));

    function picture(width: number, ...more: string[]): Pixels {
      const shot = join(folder, `${width}${more.length}.png`);
      const options = [
        '--headless',
        '--no-sandbox',
        '--disable-gpu',
        '--disable-background-networking',
        '--hide-scrollbars',
        `--user-data-dir=${join(folder, 'profile')}`,
        `--window-size=${width},2400`,
        `--screenshot=${shot}`,
      ];
      execFileSync(browser ?? '', [...options, ...more, pathToFileURL(page).href], {
        stdio: 'ignore',
      });
      return pngPixels(readFileSync(shot));
    }

    const count = ({ width, height, at }: Pixels, colour: string) => {
      let found = 0;
      for (let y = 0; y < height; y += 1)
        for (let x = 0; x < width; x += 1) if (at(x, y) === colour) found += 1;
      return found;
    };

    it('shows lines, bars and bands on a light ground, and nothing over the edge', () => {
      const shot = picture(1100);
      const { ground, line, band, card, ink } = PALETTES.light;
      expect(shot.at(2, 2)).toBe(ground);
      // A line some hundred pixels long, eight bars, and their bands are thousands of pixels.
      for (const colour of [line, band, card]) expect(count(shot, colour)).toBeGreaterThan(1000);
      expect(count(shot, ink)).toBeGreaterThan(100);
      for (let y = 0; y < shot.height; y += 1) expect(shot.at(shot.width - 3, y)).toBe(ground);
    });

    it('fits a narrow screen', () => {
      const shot = picture(500);
      expect(shot.width).toBe(500);
      for (let y = 0; y < shot.height; y += 1) expect(shot.at(497, y)).toBe(PALETTES.light.ground);
    });

    it('turns dark where the reader likes it dark', () => {
      const shot = picture(1100, '--blink-settings=preferredColorScheme=0');
      expect(shot.at(2, 2)).toBe(PALETTES.dark.ground);
      expect(count(shot, PALETTES.dark.line)).toBeGreaterThan(1000);
    });
  },
  120_000,
);
