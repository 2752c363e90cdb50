import type { Page } from 'playwright-core';

/** The canvas of the trace as a data address: two equal ones are the same picture to the pixel. */
export function picture(page: Page): Promise<string> {
  return page.evaluate<string>(`document.querySelector('.trace-host canvas').toDataURL()`);
}

/** Counts the pixels in the very colour of the curve, so that a grid alone does not pass for one. Runs in the page, hence the text. */
export function inkPixels(page: Page): Promise<number> {
  return page.evaluate<number>(`(() => {
    const canvas = document.querySelector('.trace-host canvas');
    const { data } = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height);
    const [red, green, blue] = getComputedStyle(document.body).color.match(/\\d+/g).map(Number);
    let count = 0;
    for (let i = 0; i < data.length; i += 4) {
      if (data[i] === red && data[i + 1] === green && data[i + 2] === blue && data[i + 3] === 255) count += 1;
    }
    return count;
  })()`);
}
