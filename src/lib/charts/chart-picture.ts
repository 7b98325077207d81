/** A chart as a picture that stands alone on a slide: its title and its sentence above it. */
import type { ChartData } from './chart-data.ts';
import type { ChartLook } from './chart-look.ts';

export const pictureWidthPx = 960;

const marginPx = 28;
const sentencePx = 16;
const footPx = 13;
const footLinePx = 19;

/**
 * Sets the drawn chart under title and summary and over a line that says whose figures it shows, on paper. Sizes are the
 * page's pixels; the picture has more of its own.
 */
export function chartPicture(
  chart: HTMLCanvasElement,
  data: Pick<ChartData, 'title' | 'summary'> & { readonly provenance: string | null },
  look: ChartLook
): HTMLCanvasElement {
  const picture = document.createElement('canvas');
  const measure = picture.getContext('2d');
  if (measure === null) throw new Error('This browser cannot draw pictures.');
  const room = pictureWidthPx - 2 * marginPx;
  const text = [
    { lines: [data.title], font: `600 22px ${look.fontFamily}`, height: 32, colour: look.ink },
    {
      lines: [data.summary],
      font: `400 ${sentencePx}px ${look.fontFamily}`,
      height: 23,
      colour: look.inkSoft
    }
  ].map((block) => {
    measure.font = block.font;
    return { ...block, lines: block.lines.flatMap((line) => wrapToWidth(line, room, measure)) };
  });
  const headPx = marginPx + text.reduce((sum, { lines, height }) => sum + lines.length * height, 0) + 16;
  const chartPx = chart.height / look.pixelRatio;
  const footFont = `400 ${footPx}px ${look.fontFamily}`;
  measure.font = footFont;
  const foot = data.provenance === null ? [] : wrapToWidth(data.provenance, room, measure);
  const heightPx = headPx + chartPx + foot.length * footLinePx + marginPx;

  picture.width = Math.round(pictureWidthPx * look.pixelRatio);
  picture.height = Math.round(heightPx * look.pixelRatio);
  const ctx = measure;
  ctx.scale(look.pixelRatio, look.pixelRatio);
  ctx.fillStyle = look.paper;
  ctx.fillRect(0, 0, pictureWidthPx, heightPx);
  let top = marginPx;
  ctx.textBaseline = 'top';
  for (const { lines, font, height, colour } of text) {
    ctx.font = font;
    ctx.fillStyle = colour;
    for (const line of lines) {
      ctx.fillText(line, marginPx, top);
      top += height;
    }
  }
  ctx.drawImage(chart, marginPx, headPx, chart.width / look.pixelRatio, chartPx);
  ctx.font = footFont;
  ctx.fillStyle = look.inkSoft;
  foot.forEach((line, index) =>
    ctx.fillText(line, marginPx, headPx + chartPx + marginPx / 2 + index * footLinePx)
  );
  return picture;
}

/** The width that a chart has within a picture. */
export const chartInPicturePx = pictureWidthPx - 2 * marginPx;

function wrapToWidth(text: string, widthPx: number, ctx: CanvasRenderingContext2D): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const longer = `${lines.at(-1) ?? ''} ${word}`.trim();
    if (lines.length > 0 && ctx.measureText(longer).width <= widthPx) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}
