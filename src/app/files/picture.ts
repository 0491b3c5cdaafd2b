/** A chart as a picture file: the drawing as it stands, with its styles written in, as SVG or PNG. */
import { download, safeFileName } from './download.ts';

/** What a drawing needs of the page's styles to look the same outside of it. */
const STYLES = [
  'fill',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linejoin',
  'opacity',
  'font-family',
  'font-size',
  'font-weight',
  'text-anchor',
  'paint-order',
] as const;

/** Sharp on paper and on a projector. */
const PNG_SCALE = 2;

/** The picture in a figure: its canvas, where it has one, under its drawing. */
function standaloneSvg(figure: HTMLElement): SVGSVGElement | null {
  const drawn = figure.querySelector('svg');
  if (!drawn) return null;
  const copy = drawn.cloneNode(true) as SVGSVGElement;
  const originals = [drawn, ...drawn.querySelectorAll<SVGElement>('*')];
  const copies = [copy, ...copy.querySelectorAll<SVGElement>('*')];
  originals.forEach((original, index) => writeStyles(original, copies[index]));
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
  copy.prepend(background(figure, drawn), ...canvasImages(figure, drawn));
  return copy;
}

function writeStyles(original: SVGElement, copy: SVGElement | undefined): void {
  const computed = getComputedStyle(original);
  for (const name of STYLES) {
    const value = computed.getPropertyValue(name);
    if (value !== '') copy?.setAttribute(name, value);
  }
  copy?.removeAttribute('class');
}

function background(figure: HTMLElement, drawn: SVGSVGElement): SVGRectElement {
  const rect = document.createElementNS('http://www.w3.org/2000/svg', 'rect');
  rect.setAttribute('width', String(drawn.clientWidth));
  rect.setAttribute('height', String(drawn.clientHeight));
  rect.setAttribute('fill', getComputedStyle(figure).backgroundColor);
  return rect;
}

function canvasImages(figure: HTMLElement, drawn: SVGSVGElement): SVGImageElement[] {
  const corner = drawn.getBoundingClientRect();
  return [...figure.querySelectorAll('canvas')].map((canvas) => {
    const place = canvas.getBoundingClientRect();
    const image = document.createElementNS('http://www.w3.org/2000/svg', 'image');
    image.setAttribute('href', canvas.toDataURL());
    image.setAttribute('x', String(place.left - corner.left));
    image.setAttribute('y', String(place.top - corner.top));
    image.setAttribute('width', String(place.width));
    image.setAttribute('height', String(place.height));
    return image;
  });
}

export function saveSvg(figure: HTMLElement, name: string): void {
  const svg = standaloneSvg(figure);
  if (svg) download(svgBlob(svg), `${safeFileName(name)}.svg`);
}

export async function savePng(figure: HTMLElement, name: string): Promise<void> {
  const svg = standaloneSvg(figure);
  if (!svg) return;
  const address = URL.createObjectURL(svgBlob(svg));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = image.naturalWidth * PNG_SCALE;
    canvas.height = image.naturalHeight * PNG_SCALE;
    canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
    const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve));
    if (blob) download(blob, `${safeFileName(name)}.png`);
  } finally {
    URL.revokeObjectURL(address);
  }
}

const svgBlob = (svg: SVGSVGElement): Blob =>
  new Blob([new XMLSerializer().serializeToString(svg)], { type: 'image/svg+xml' });
